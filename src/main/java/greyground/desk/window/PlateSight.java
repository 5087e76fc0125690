package greyground.desk.window;

import greyground.app.live.LivePlate;
import greyground.app.live.ToneAt;
import greyground.app.sight.LivePicture;
import greyground.app.sight.LiveView;
import greyground.desk.look.RoomLight;
import greyground.desk.model.BenchState;
import greyground.desk.model.Comparison;
import greyground.desk.model.DeskWords;
import greyground.desk.model.FirstSight;
import greyground.desk.model.LiveDesk;
import greyground.desk.model.PicturePorts;
import greyground.desk.model.Station;
import greyground.desk.model.Viewport;
import greyground.desk.picture.DiagramView;
import greyground.desk.picture.PictureView;
import greyground.desk.picture.StationRail;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/**
 * Asks the live desk for what is seen of a plate, and shows what comes: the picture of the station chosen, the loupe, the small pictures
 * of all stations, and the tone under the pointer.
 */
final class PlateSight {
    private final LiveDesk live;
    private final DeskFrame frame;
    private final StationRail rail;
    private final DiagramView diagram;
    private final PictureView picture;
    private @Nullable LivePlate plate;
    private @Nullable BenchState state;
    private @Nullable Pointed pointed;
    private RoomLight light = new RoomLight(false);
    private boolean inches;
    private Consumer<Comparison.Seen> loupeSeen = seen -> {};
    private Runnable moved = () -> {};

    PlateSight(LiveDesk live, DeskFrame frame, StationRail rail, DiagramView diagram) {
        this.live = live;
        this.frame = frame;
        this.rail = rail;
        this.diagram = diagram;
        diagram.whenWalked(tone -> frame.tellTone(DiagramView.words(tone)));
        this.picture = new PictureView(this::askPicture, this::askLoupe, this::point);
    }

    /** A place that was pointed at. */
    private record Pointed(Station station, double x, double y) {}

    /** What lies on the bench is another state: all that is seen is of before; of other art nothing is kept. */
    void expect(BenchState now) {
        BenchState before = state;
        state = now;
        if (before == null || !before.art().equals(now.art())) {
            clear();
            state = now;
        }
        picture.stale();
        rail.stale();
        diagram.stale();
        frame.tellTone("");
    }

    /** What to see first of art that is being read. */
    FirstSight.WholeView whole() {
        int width = (int) Math.max(picture.port().width(), frame.room().getWidth());
        int height = (int) Math.max(picture.port().height(), frame.room().getHeight());
        double scale = picture.outputScale();
        return (across, down) ->
                PicturePorts.wholeArt(across, down, width, height).view(scale);
    }

    /** Shows art as soon as it is read. */
    void show(FirstSight seen) {
        BenchState from = state;
        if (from != null) {
            picture.measure(
                    seen.width(),
                    seen.height(),
                    from.job().plate().widthMillimetres(),
                    from.job().plate().heightMillimetres());
            picture.show(seen.picture(), seen.view(), Station.ART, from);
        }
    }

    PictureView picture() {
        return picture;
    }

    /** Hears what the loupe shows. */
    void whenLoupeSeen(Consumer<Comparison.Seen> hears) {
        loupeSeen = hears;
    }

    /** Hears that another part of the picture is to be seen. */
    void whenPictureMoves(Runnable hears) {
        Runnable before = moved;
        moved = () -> {
            before.run();
            hears.run();
        };
    }

    /** The plate as it was last computed. */
    Optional<LivePlate> plate() {
        return Optional.ofNullable(plate);
    }

    /** Shows a plate that has been computed anew. */
    void show(LivePlate made) {
        plate = made;
        picture.measure(
                made.artWidth(),
                made.artHeight(),
                made.job().plate().widthMillimetres(),
                made.job().plate().heightMillimetres());
        Pointed last = pointed;
        if (last != null && last.station() == picture.station()) {
            point(last.x(), last.y());
        }
    }

    /** Nothing is on the bench. */
    void clear() {
        plate = null;
        state = null;
        pointed = null;
        picture.clear();
        rail.clear();
        diagram.show(null);
        frame.tellTone("");
    }

    void choose(Station chosen) {
        if (chosen != picture.station()) {
            pointed = null;
            diagram.follow(null);
            frame.tellTone("");
        }
        picture.choose(chosen);
        if (plate != null) {
            picture.fitIfNew();
            askPicture();
        }
    }

    void look(RoomLight shining) {
        light = shining;
        rail.look(light);
        picture.look(light, inches);
        diagram.look(light);
        askAll();
    }

    void measureInInches(boolean wanted) {
        inches = wanted;
        picture.look(light, inches);
    }

    void askAll() {
        askPicture();
        if (picture.loupeOn()) {
            askLoupe();
        }
        askThumbnails();
    }

    private void askPicture() {
        moved.run();
        BenchState from = state;
        if (plate != null && from != null) {
            LiveView view = picture.view();
            Station seen = picture.station();
            live.picture(seen, view, shown -> picture.show(shown, view, seen, from));
        }
    }

    private void askLoupe() {
        LivePlate of = plate;
        if (of != null) {
            Station seen = picture.station();
            double x = picture.loupe().x();
            double y = picture.loupe().y();
            live.loupe(seen, picture.loupeView(), (shown, tone) -> {
                if (seen == picture.station()) {
                    picture.showLoupe(shown);
                    tell(seen, x, y, tone);
                    OptionalDouble bite = of.biteMinutes();
                    double depth = bite.isPresent() ? of.depthMicrometres(bite.getAsDouble()) : 0;
                    loupeSeen.accept(new Comparison.Seen(seen, x, y, shown, tone, bite, depth));
                }
            });
        }
    }

    private void askThumbnails() {
        LivePlate made = plate;
        if (made == null) {
            return;
        }
        double scale = picture.outputScale();
        LiveView art = whole(made.artWidth(), made.artHeight(), scale);
        LiveView ofPlate =
                whole(made.job().plate().widthMillimetres(), made.job().plate().heightMillimetres(), scale);
        live.thumbnails(art, ofPlate, (each, small) -> rail.show(each, small, light));
    }

    /** A print as small as the list of recent files shows it. */
    void small(Consumer<LivePicture> hears) {
        LivePlate made = plate;
        if (made != null) {
            Viewport.Area area = new Viewport.Area(
                    0,
                    0,
                    made.job().plate().widthMillimetres(),
                    made.job().plate().heightMillimetres());
            live.small(Viewport.fitting(area, 160, 120).view(1), hears);
        }
    }

    private static LiveView whole(double width, double height, double scale) {
        return Viewport.fitting(
                        new Viewport.Area(0, 0, width, height), StationRail.PICTURE_WIDTH, StationRail.PICTURE_HEIGHT)
                .view(scale);
    }

    private void point(double x, double y) {
        if (plate != null) {
            Station seen = picture.station();
            pointed = new Pointed(seen, x, y);
            live.tone(seen, x, y, told -> tell(seen, x, y, told));
        }
    }

    /** Foot and diagram tell of the same place. */
    private void tell(Station seen, double x, double y, ToneAt tone) {
        if (seen == picture.station()) {
            diagram.follow(tone);
            frame.tellTone(DeskWords.place(seen, x, y, inches) + "   " + DiagramView.words(tone));
        }
    }
}
