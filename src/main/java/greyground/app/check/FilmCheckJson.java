package greyground.app.check;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import greyground.json.JsonText;
import greyground.plate.inspect.FilmFindings;
import java.util.Locale;

/** Checks of a film as JSON. */
final class FilmCheckJson {
    private FilmCheckJson() {}

    static void add(ObjectNode tree, FilmChecks checks) {
        ObjectNode black = tree.putObject("black");
        black.set("neededDensity", JsonText.number(checks.black().needed()));
        black.set("filmDensity", JsonText.number(checks.black().onFilm()));
        ArrayNode films = tree.putArray("films");
        for (FilmChecks.Inspected film : checks.films()) {
            ObjectNode node = films.addObject();
            node.put("film", film.number());
            node.put("through", film.through().name().toLowerCase(Locale.ROOT));
            findings(node, film.findings());
        }
    }

    private static void findings(ObjectNode node, FilmFindings found) {
        ObjectNode open = node.putObject("openBite");
        open.put("count", found.openBiteCount());
        open.set("squareMillimetres", JsonText.number(found.openBiteSquareMillimetres()));
        open.set("criticalWidthMillimetres", JsonText.number(found.limits().criticalWidthMicrometres() / 1000));
        ArrayNode sites = open.putArray("sites");
        for (FilmFindings.OpenBite bite : found.openBites()) {
            ObjectNode site = place(sites.addObject(), bite);
            site.set("widthMillimetres", JsonText.number(bite.widthMillimetres()));
            site.set("lostLandSquareMillimetres", JsonText.number(bite.lostLandSquareMillimetres()));
        }
        ObjectNode lost = node.putObject("lostLands");
        lost.put("count", found.lostLandCount());
        lost.set("share", JsonText.number(found.lostLandShare()));
        lost.set("narrowerThanMicrometres", JsonText.number(found.limits().leastLandMicrometres()));
        ArrayNode lands = lost.putArray("worst");
        for (FilmFindings.LostLand land : found.lostLands()) {
            place(lands.addObject(), land).put("count", land.count());
        }
        ObjectNode shut = node.putObject("shutOpenings");
        shut.put("count", found.shutOpeningCount());
        shut.set("share", JsonText.number(found.shutShare()));
        shut.set("narrowerThanMicrometres", JsonText.number(found.limits().leastOpeningMicrometres()));
        ArrayNode openings = shut.putArray("worst");
        for (FilmFindings.ShutOpening opening : found.shutOpenings()) {
            place(openings.addObject(), opening).put("count", opening.count());
        }
    }

    private static ObjectNode place(ObjectNode node, FilmFindings.Finding finding) {
        node.set("acrossMillimetres", JsonText.number(finding.acrossMillimetres()));
        node.set("downMillimetres", JsonText.number(finding.downMillimetres()));
        node.set("squareMillimetres", JsonText.number(finding.areaSquareMillimetres()));
        return node;
    }
}
