package greyground.desk.model;

import greyground.app.live.LiveBite;
import greyground.app.live.ToneAt;
import greyground.app.sight.LivePicture;
import greyground.quantity.Refusal;
import greyground.quantity.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What is laid side by side at the loupe's scale: a place held fast beside the one under the loupe, or one place at two bite times. What is
 * held keeps its picture and its words whatever changes afterwards. Knows nothing of the window; one thread uses it.
 */
public final class Comparison {
    private Kind kind = Kind.NONE;
    private Optional<Seen> held = Optional.empty();
    private Optional<Seen> live = Optional.empty();
    private List<LiveBite> bites = List.of();
    private OptionalDouble otherMinutes = OptionalDouble.empty();

    public enum Kind {
        NONE,
        TWO_PLACES,
        TWO_BITES
    }

    /**
     * What the loupe showed.
     *
     * @param x of its middle: millimetres of plate, or pixels of art
     * @param y the same, down
     * @param biteMinutes of the plate; empty where nothing is bitten
     * @param depthMicrometres of that bite, 0 where nothing is bitten
     */
    public record Seen(
            Station station,
            double x,
            double y,
            LivePicture picture,
            ToneAt tone,
            OptionalDouble biteMinutes,
            double depthMicrometres) {}

    /**
     * One side.
     *
     * @param lines under the title, short
     * @param picture as wide as the loupe shows; empty while it is computed
     */
    public record Side(String title, List<String> lines, Optional<LivePicture> picture) {}

    public Kind kind() {
        return kind;
    }

    public void see(Seen seen) {
        boolean moved = live.isEmpty()
                || live.get().station() != seen.station()
                || live.get().x() != seen.x()
                || live.get().y() != seen.y();
        live = Optional.of(seen);
        if (moved) {
            bites = List.of();
        }
    }

    /** Goes to a station. What was held of the art has another scale than the plate, and the other way round. */
    public void choose(Station station) {
        live = Optional.empty();
        bites = List.of();
        boolean art = station == Station.ART;
        if (held.isPresent() && (held.get().station() == Station.ART) != art) {
            held = Optional.empty();
            kind = kind == Kind.TWO_PLACES ? Kind.NONE : kind;
        }
        kind = art && kind == Kind.TWO_BITES ? Kind.NONE : kind;
    }

    /** Holds fast what the loupe shows, in place of what was held before; false where it shows nothing yet. */
    public boolean freeze() {
        if (live.isEmpty()) {
            return false;
        }
        held = live;
        kind = Kind.TWO_PLACES;
        return true;
    }

    /**
     * Lays the place at another bite time beside the usual one.
     *
     * @param minutes 0.1 to 1000
     */
    public void compareBites(double minutes) {
        otherMinutes =
                OptionalDouble.of(Refusal.checkRange("other bite", minutes, 0.1, 1000, "min", "10 to 40 min is usual"));
        bites = List.of();
        kind = Kind.TWO_BITES;
    }

    /** The bite time to be laid beside the usual one: what was typed, or half as long again. */
    public OptionalDouble otherMinutes(OptionalDouble usual) {
        if (otherMinutes.isPresent() || usual.isEmpty()) {
            return otherMinutes;
        }
        return OptionalDouble.of(Math.max(0.1, Math.min(1000, Math.rint(usual.getAsDouble() * 3) / 2)));
    }

    /** The place at both bite times has been computed. */
    public void bitten(List<LiveBite> made) {
        bites = List.copyOf(made);
    }

    /** The plate has changed: bites computed of the old one are no longer true. */
    public void plateChanged() {
        bites = List.of();
    }

    public void end() {
        kind = Kind.NONE;
        held = Optional.empty();
        bites = List.of();
    }

    /** The picture of the left side and what it is; empty where nothing is compared. */
    public Optional<Side> left(boolean inches) {
        return switch (kind) {
            case NONE -> Optional.empty();
            case TWO_PLACES -> held.map(seen -> side("Frozen", seen, inches));
            case TWO_BITES -> Optional.of(bitten(0, "The usual bite", inches));
        };
    }

    /** The same of the right side. */
    public Optional<Side> right(boolean inches) {
        String title = "Under the loupe";
        return switch (kind) {
            case NONE -> Optional.empty();
            case TWO_PLACES -> live.map(seen -> side(title, seen, inches)).or(() -> Optional.of(computing(title)));
            case TWO_BITES -> Optional.of(bitten(1, "Another bite", inches));
        };
    }

    private static Side computing(String title) {
        return new Side(title, List.of("being computed"), Optional.empty());
    }

    private static Side side(String title, Seen seen, boolean inches) {
        List<String> lines = new ArrayList<>();
        lines.add(place(seen, inches));
        ToneAt tone = seen.tone();
        lines.add(way(tone.artLightness(), tone.coverage(), tone.printLightness()));
        if (seen.biteMinutes().isPresent()) {
            lines.add(bite(seen.biteMinutes().getAsDouble(), seen.depthMicrometres()));
        }
        return new Side(title, lines, Optional.of(seen.picture()));
    }

    private Side bitten(int index, String title, boolean inches) {
        if (live.isEmpty() || bites.size() <= index) {
            return computing(title);
        }
        Seen seen = live.get();
        LiveBite bite = bites.get(index);
        return new Side(
                title,
                List.of(
                        bite(bite.minutes(), bite.depthMicrometres()),
                        place(seen, inches),
                        way(seen.tone().artLightness(), bite.coverage(), bite.printLightness()) + " predicted"),
                Optional.of(bite.picture()));
    }

    private static String place(Seen seen, boolean inches) {
        return seen.station().label() + " at " + DeskWords.place(seen.station(), seen.x(), seen.y(), inches);
    }

    private static String way(double artLightness, double coverage, double printLightness) {
        return String.format(
                Locale.ROOT,
                "art L* %.0f \u2192 film %.0f %% \u2192 print L* %.0f",
                artLightness,
                100 * coverage,
                printLightness);
    }

    private static String bite(double minutes, double depthMicrometres) {
        return String.format(
                Locale.ROOT, "bite %s min, %.0f \u00b5m deep", Unit.MINUTES.words(minutes, false), depthMicrometres);
    }
}
