package greyground.quantity;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * How large a film's pixels come out. A printer that prints a little too large or too small has pixels a little larger or smaller
 * than its resolution says; laid out in these, a film prints at true size.
 *
 * @param resolution that the printer claims, and that the film's file states
 * @param scaleX printed length over the length in the file, across the film as its words read, 0.9 to 1.1
 * @param scaleY the same down the film
 */
public record FilmPixels(Resolution resolution, double scaleX, double scaleY) {
    public FilmPixels {
        String remedy = "measure the film's 100 mm ruler and divide by 100";
        Refusal.checkRange("film's scale across", scaleX, 0.9, 1.1, "", remedy);
        Refusal.checkRange("film's scale down", scaleY, 0.9, 1.1, "", remedy);
    }

    /** A printer that prints at true size. */
    public static FilmPixels of(Resolution resolution) {
        return new FilmPixels(resolution, 1, 1);
    }

    /** The nearest whole number of pixels to a printed length across the film. */
    public int across(double millimetres) {
        return pixels(millimetres, scaleX);
    }

    /** The nearest whole number of pixels to a printed length down the film. */
    public int down(double millimetres) {
        return pixels(millimetres, scaleY);
    }

    private int pixels(double millimetres, double scale) {
        // The resolution's own sum first, so that a scale of 1 changes no bit.
        return Math.toIntExact(
                Math.round(millimetres * resolution.dotsPerInch() / Lengths.MILLIMETRES_PER_INCH / scale));
    }

    /** The printed length of pixels across the film. */
    public double acrossMillimetres(double pixels) {
        return resolution.millimetres(pixels) * scaleX;
    }

    /** The printed length of pixels down the film. */
    public double downMillimetres(double pixels) {
        return resolution.millimetres(pixels) * scaleY;
    }

    /** Printed distance of neighbouring columns. */
    public double pitchAcrossMicrometres() {
        return resolution.pitchMicrometres() * scaleX;
    }

    /** Printed distance of neighbouring rows. */
    public double pitchDownMicrometres() {
        return resolution.pitchMicrometres() * scaleY;
    }

    /** Side of a square pixel of the same area. */
    public double pitchMicrometres() {
        return areSquare() ? pitchAcrossMicrometres() : resolution.pitchMicrometres() * Math.sqrt(scaleX * scaleY);
    }

    /** Whether a pixel is as wide as it is high. */
    public boolean areSquare() {
        return scaleX == scaleY;
    }

    /** How and why the film's file differs from true size; empty where it does not. */
    public Optional<String> words() {
        if (scaleX == 1 && scaleY == 1) {
            return Optional.empty();
        }
        if (areSquare()) {
            return Optional.of("drawn " + drawn(scaleX) + ", since this printer prints " + printed(scaleX)
                    + " mm for 100: print at 100 %");
        }
        List<String> draws = new ArrayList<>();
        List<String> prints = new ArrayList<>();
        if (scaleX != 1) {
            draws.add(drawn(scaleX) + " across");
            prints.add(printed(scaleX) + " mm for 100 across");
        }
        if (scaleY != 1) {
            draws.add(drawn(scaleY) + " down");
            prints.add(printed(scaleY) + (prints.isEmpty() ? " mm for 100 down" : " down"));
        }
        return Optional.of("drawn " + String.join(" and ", draws) + ", since this printer prints "
                + String.join(" and ", prints) + ": print at 100 %, the same way round");
    }

    private static String drawn(double scale) {
        return String.format(
                Locale.ROOT, "%.2f %% %s", Math.abs(1 - 1 / scale) * 100, scale > 1 ? "smaller" : "larger");
    }

    private static String printed(double scale) {
        return Refusal.plain(Math.rint(scale * 10_000) / 100);
    }

    @Override
    public String toString() {
        String words = RecordWords.of(resolution);
        return words().isEmpty() ? words : words + " scaled " + scaleX + " x " + scaleY;
    }
}
