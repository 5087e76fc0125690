package greyground.app.recipe;

import greyground.art.spots.Spot;
import greyground.art.spots.SpotHealing;
import greyground.art.spots.SpotSearch;
import greyground.art.spots.SpotsFound;
import greyground.film.job.SpotWish;
import greyground.raster.Crew;
import greyground.raster.GreyPlane;
import greyground.raster.Progress;
import java.io.IOException;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Dust, hairs and scratches of one page: what stands out there, and the page healed. The art that holds it works it. */
final class ArtSpots {
    private @Nullable SpotsFound found;
    private @Nullable Healed healed;

    private record Healed(List<Spot> spots, GreyPlane plane) {}

    /** Gets the page as it was read. */
    @FunctionalInterface
    interface Page {
        GreyPlane upright() throws IOException;
    }

    SpotsFound found(Page page) throws IOException {
        SpotsFound present = found;
        if (present == null) {
            present = SpotSearch.in(page.upright(), Crew.allCores(), Progress.NONE);
            found = present;
        }
        return present;
    }

    /** The page with its spots healed, or itself where none are; whoever holds it never closes it. */
    GreyPlane healed(GreyPlane upright, SpotWish wish, Progress progress) throws IOException {
        List<Spot> spots = wish instanceof SpotWish.Chosen chosen
                ? chosen.spots().stream().filter(Spot::accepted).toList()
                : wish instanceof SpotWish.Found ? found(() -> upright).dust() : List.of();
        Healed present = healed;
        if (present != null && present.spots().equals(spots)) {
            return present.plane();
        }
        letGo();
        if (spots.isEmpty()) {
            return upright;
        }
        SpotHealing healing = SpotHealing.of(upright, spots);
        GreyPlane plane = ArtPlanes.stored(
                upright.width(), upright.height(), store -> healing.rows(Crew.allCores(), store::putRows, progress));
        healed = new Healed(spots, plane);
        return plane;
    }

    boolean holds(GreyPlane plane) {
        Healed present = healed;
        return present != null && present.plane() == plane;
    }

    void letGo() {
        Healed present = healed;
        healed = null;
        if (present != null) {
            present.plane().close();
        }
    }
}
