package greyground.desk.setting;

import greyground.desk.model.BenchState;
import greyground.desk.model.Station;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Every setting of the desk, by station. */
public final class Settings {
    static final List<Setting> ALL = Stream.of(
                    ArtSettings.ALL, FilmSettings.ALL, ResistSettings.ALL, CopperSettings.ALL, PrintSettings.ALL)
            .flatMap(List::stream)
            .toList();

    private Settings() {}

    /** Those of a station that mean anything now, in the order they are shown. */
    static List<Setting> at(Station station, BenchState state) {
        return ALL.stream()
                .filter(setting -> setting.station() == station && setting.applies(state))
                .toList();
    }

    /** The setting of a path of the workshop or a word of the job; empty where the desk has none. */
    public static Optional<Setting> mending(String mends) {
        return ALL.stream()
                .filter(setting -> !mends.isEmpty() && mends.equals(told(setting)))
                .findFirst();
    }

    private static String told(Setting setting) {
        if (setting instanceof Setting.ShopNumber shop) {
            return shop.path();
        }
        return setting instanceof Setting.JobNumber job ? job.word() : "";
    }

    /** Finds a setting. */
    public static Setting named(String id) {
        return ALL.stream()
                .filter(setting -> setting.id().equals(id))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no setting is called " + id));
    }
}
