package greyground.desk.setting;

import greyground.desk.model.BenchState;
import greyground.desk.model.Station;
import greyground.film.job.ArtFields;
import greyground.film.job.FilmFields;
import greyground.film.job.HandFields;
import greyground.film.job.JobField;
import greyground.film.job.LineFields;
import greyground.film.job.OutlineFields;
import greyground.film.job.PlacingFields;
import greyground.film.job.RetouchFields;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Every setting of the desk, by station. */
public final class Settings {
    static final List<Setting> ALL = Stream.of(
                    ofJob(
                            Station.ART,
                            ArtFields.WHITE,
                            ArtFields.BLACK,
                            HandFields.MIDDLE,
                            HandFields.HARDNESS,
                            HandFields.LOCAL_CONTRAST,
                            HandFields.CRISP,
                            HandFields.TONES,
                            FilmFields.TITLE,
                            ArtFields.ROTATE,
                            HandFields.SOURCE,
                            HandFields.EVEN_PAPER,
                            LineFields.THRESHOLD,
                            LineFields.SPECKS,
                            LineFields.GROWTH,
                            HandFields.THROUGH,
                            HandFields.EMULSION,
                            HandFields.CRISP_RADIUS,
                            RetouchFields.TOUCHES,
                            ArtFields.RANGE,
                            ArtFields.CROP_LEFT,
                            ArtFields.CROP_TOP,
                            ArtFields.CROP_WIDTH,
                            ArtFields.CROP_HEIGHT,
                            ArtFields.PAGE),
                    ofJob(
                            Station.FILM,
                            FilmFields.PLATE_WIDTH,
                            FilmFields.PLATE_HEIGHT,
                            OutlineFields.PLATE_SHAPE,
                            PlacingFields.FIT,
                            OutlineFields.OUTLINE,
                            OutlineFields.FADE,
                            OutlineFields.TEAR,
                            OutlineFields.OUTSIDE,
                            FilmFields.CARRIER,
                            FilmFields.GRAIN,
                            FilmFields.RULING,
                            FilmFields.ANGLE,
                            FilmFields.DOTS,
                            FilmFields.SCREEN_SPACING,
                            FilmFields.SCREEN_BLACK,
                            FilmFields.MEND,
                            FilmFields.RESERVE,
                            PlacingFields.BLEED,
                            PlacingFields.BEVEL,
                            PlacingFields.OWN_SHEET_SIZE,
                            PlacingFields.SHEET_WIDTH,
                            PlacingFields.SHEET_HEIGHT,
                            PlacingFields.TILE,
                            PlacingFields.STRIP,
                            PlacingFields.INK_SIDE,
                            PlacingFields.TRANSFERS,
                            FilmFields.RESOLUTION),
                    ShopSettings.at(Station.FILM).stream(),
                    ofJob(Station.RESIST, FilmFields.PROCESS, FilmFields.AQUATINT_LAND, FilmFields.AQUATINT_GRAIN),
                    ShopSettings.at(Station.RESIST).stream(),
                    ShopSettings.at(Station.COPPER).stream(),
                    ShopSettings.at(Station.PRINT).stream(),
                    ofJob(Station.PRINT, PlacingFields.SHRINK_ACROSS, PlacingFields.SHRINK_DOWN))
            .<Setting>flatMap(settings -> settings)
            .toList();

    private Settings() {}

    private static Stream<Setting> ofJob(Station station, JobField<?>... fields) {
        return Stream.of(fields).map(field -> Setting.of(field, station));
    }

    /** Those of a station that mean anything now, in the order they are shown. */
    static List<Setting> at(Station station, BenchState state) {
        return ALL.stream()
                .filter(setting -> setting.station() == station && setting.applies(state))
                .toList();
    }

    /** The setting of a path of the workshop or of a field of the job; empty where the desk has none. */
    public static Optional<Setting> mending(String mends) {
        return ALL.stream()
                .filter(setting ->
                        mends.equals(setting instanceof Setting.ShopNumber shop ? shop.path() : setting.id()))
                .findFirst();
    }

    public static Setting named(String id) {
        return ALL.stream()
                .filter(setting -> setting.id().equals(id))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no setting is called " + id));
    }
}
