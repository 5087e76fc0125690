package greyground.output;

import greyground.film.sheet.FilmRows;
import greyground.film.sheet.Legend;
import greyground.film.sheet.Sheet;
import greyground.output.FilmDocument.Film;
import greyground.output.PlanDocument.CurvePoint;
import greyground.plan.ExposurePlan;
import greyground.plan.ExposurePlan.Line;
import greyground.plan.ExposurePlan.Step;
import greyground.quantity.FilmPixels;
import greyground.quantity.Resolution;
import greyground.raster.Bands;
import greyground.raster.PixelRect;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

/** Invented films and an invented plan: a pattern that has no symmetry, so that a turned or mirrored picture shows. */
final class SampleFilm {
    static final String TITLE = "Harbour wall, second state: ebb & flow <1>";
    static final LocalDate DATE = LocalDate.of(2026, 3, 4);

    private SampleFilm() {}

    /** A wash that darkens to the right and down, with rings, broken into dots by a hash when it has 1 bit. */
    record Pattern(int width, int height, int bitsPerSample) implements FilmRows {
        @Override
        public Bands.Maker<byte[]> maker() {
            return (first, count) -> {
                byte[] band = new byte[bytesPerRow() * count];
                for (int row = 0; row < count; row++) {
                    for (int x = 0; x < width; x++) {
                        put(band, row * bytesPerRow(), x, sample(x, first + row));
                    }
                }
                return band;
            };
        }

        private void put(byte[] band, int start, int x, int sample) {
            if (bitsPerSample == 1) {
                band[start + x / 8] |= (byte) (sample << 7 - x % 8);
            } else if (bitsPerSample == 8) {
                band[start + x] = (byte) sample;
            } else {
                band[start + 2 * x] = (byte) (sample >> 8);
                band[start + 2 * x + 1] = (byte) sample;
            }
        }

        /** The sample, black counted, at a place of the film. */
        int sample(int x, int y) {
            double u = (x + 0.5) / width;
            double v = (y + 0.5) / height;
            double black = 0.15 + 0.5 * u * u + 0.25 * v + 0.1 * Math.sin(40 * Math.hypot(u - 0.3, v - 0.4));
            if (bitsPerSample > 1) {
                return (int) Math.round(Math.max(0, Math.min(1, black)) * ((1 << bitsPerSample) - 1));
            }
            int hash = (x / 3 * 73_856_093 ^ y / 3 * 19_349_663) * 0x9E3779B1;
            return (hash >>> 8) / (double) (1 << 24) < black ? 1 : 0;
        }
    }

    static Film film(int dotsPerInch, double widthMillimetres, double heightMillimetres, int bits) {
        Resolution resolution = new Resolution(dotsPerInch);
        int width = resolution.pixels(widthMillimetres);
        int height = resolution.pixels(heightMillimetres);
        int margin = resolution.pixels(20);
        int bleed = resolution.pixels(3);
        PixelRect plate = new PixelRect(margin, margin, width - 2 * margin, height - 2 * margin);
        PixelRect image =
                new PixelRect(margin - bleed, margin - bleed, plate.width() + 2 * bleed, plate.height() + 2 * bleed);
        List<Legend> legends = List.of(
                new Legend(20, 10, 3, 0, "INK SIDE: reads right when the ink faces you"),
                new Legend(20, 15, 1.6, 0, "Grain 180 µm · 1440 dpi · Übergang 0.05–0.95"),
                new Legend(widthMillimetres - 8, 30, 1.6, 1, "expose 150 s, no separate screen"),
                new Legend(8, heightMillimetres - 30, 1.6, 3, "plate 80 × 60 mm"));
        return new Film(
                new Sheet(FilmPixels.of(resolution), width, height, plate, image, legends),
                new Pattern(width, height, bits));
    }

    static FilmDocument document(Film... films) {
        return new FilmDocument(
                List.of(films),
                bench(TITLE),
                List.of(
                        attachment(Attachment.PLAN, "application/json", "{\"steps\": []}"),
                        attachment(Attachment.JOB, "application/json", "{\"plate\": \"80x60mm\"}"),
                        attachment(Attachment.WORKSHOP, "application/json", "{\"film\": {}}"),
                        attachment(Attachment.CURVE, "application/json", "[[0, 1], [100, 0]]"),
                        attachment(Attachment.PLAN_TEXT, "text/plain", "Thinning: 27 min\n")));
    }

    /** The same film of another work. */
    static FilmDocument titled(String title, FilmDocument film) {
        return new FilmDocument(film.films(), bench(title), film.attachments());
    }

    private static PlanDocument bench(String title) {
        return new PlanDocument(
                title,
                "80 × 60 mm, etched film, grain 180 µm at 1440 dpi",
                DATE,
                "Greyground 0.2.0",
                particulars(),
                curve(),
                plan());
    }

    private static Attachment attachment(String name, String type, String words) {
        return new Attachment(name, type, words, "the film's " + name, Attachment.Relationship.DATA);
    }

    private static List<Line> particulars() {
        return List.of(
                new Line("process", "etched film, grain on the positive", "", ""),
                new Line("plate", "80 × 60 mm", "", ""),
                new Line("film", "1440 dpi, ink side down", "", ""),
                new Line("black density", "3.10", "measured 2026-02-11", ""),
                new Line("grain", "180 µm", "assumed", ""),
                new Line("curve", "coverage 0.04 to 0.88", "computed from the workshop", ""));
    }

    private static List<CurvePoint> curve() {
        List<CurvePoint> points = new ArrayList<>();
        for (int i = 0; i <= 32; i++) {
            double lightness = i * 100.0 / 32;
            points.add(new CurvePoint(lightness, 0.88 * Math.pow(1 - lightness / 100, 1.6)));
        }
        return points;
    }

    private static ExposurePlan plan() {
        return new ExposurePlan(
                List.of(
                        step(
                                "Thin the film",
                                List.of(
                                        new Line(
                                                "time in the soda bath",
                                                "27 min",
                                                "assumed",
                                                "common practice, no source; every shop finds its own time once by test"),
                                        new Line("window", "20 to 30 min", "assumed", "common practice, no source"),
                                        new Line(
                                                "soda, anhydrous",
                                                "10 g/L",
                                                "assumed",
                                                "about 1 % (general trade figure)")),
                                "Slide the plate in face up, keep the bath still and at one temperature, and turn the plate once at half time.",
                                "Soda is a mild alkali and dries the skin: gloves; weigh the powder without raising dust."),
                        step(
                                "Expose",
                                List.of(
                                        new Line("screen exposure", "none", "computed", "the grain is on the film"),
                                        new Line(
                                                "image exposure",
                                                "150 s",
                                                "assumed",
                                                "60 s + 90 s, the sum of the two a screened plate would get"),
                                        new Line(
                                                "step held",
                                                "8 of 21",
                                                "measured 2026-02-11",
                                                "wedge of 0.15 density steps"),
                                        new Line(
                                                "black density needed",
                                                "2.00",
                                                "computed",
                                                "step 8 held, contrast 1.66, margin 0.3")),
                                "Ink side down on the plate, in the vacuum frame. Draw the air out for two minutes before the lamp is lit.",
                                "Never look at or reach under a lit lamp. Close the frame first; wear UV-blocking eyewear and cover the skin. Some lamps make ozone and grow hot."),
                        step(
                                "Develop",
                                List.of(
                                        new Line("soda, monohydrate", "1 %", "assumed", "trade standard"),
                                        new Line("time to first copper", "45 s", "measured 2026-02-11", "strip 3"),
                                        new Line("time in all", "75 s", "computed", "first copper at 60 % of it")),
                                "Look for bare copper in the deepest black with the loupe before you stop.",
                                ""),
                        step(
                                "Harden",
                                List.of(new Line("flood exposure", "10 min", "assumed", "common practice, no source")),
                                "Dry the plate first.",
                                "The lamp again: closed frame, eyewear, covered skin."),
                        step(
                                "Stop out the back and edges",
                                List.of(),
                                "Cover the back, the edges and everything outside the platemark. Let the ground dry through.",
                                "Solvent vapour: ventilate; oily rags go into a closed metal bin."),
                        step(
                                "Bite",
                                List.of(
                                        new Line("time", "20 min", "assumed", "the bite log will correct it"),
                                        new Line(
                                                "bath strength",
                                                "42 °Bé (SG 1.408)",
                                                "measured 2026-03-01",
                                                "hydrometer, 145 modulus"),
                                        new Line("temperature", "20 °C", "assumed", ""),
                                        new Line(
                                                "copper taken up", "5.4 g", "computed", "600 cm² at 40 %, 25 µm deep")),
                                "Face down on floats, or face up with a feather. Look at 10 min, then every 3.",
                                "Ferric chloride is acidic, corrosive and stains: gloves, goggles, apron, eyewash within reach.|Copper or brass only in this bath: never zinc, never aluminium.|Spent bath holds copper: collect it, label it, hand it to a licensed carrier. Never to the drain."),
                        step(
                                "Proof and look",
                                List.of(new Line(
                                        "turning point",
                                        "88 % coverage",
                                        "computed",
                                        "past it more black prints paler")),
                                "Write down what the proof measures; it tells how many more minutes the bite needs.",
                                "")),
                "Expose 150 s, no separate screen; bite 20 min at 42 °Bé and 20 °C",
                "General cautions only. The safety data sheet of the material in your hand, local law, your studio's rules and qualified people come first.");
    }

    private static Step step(String title, List<Line> lines, String advice, String cautions) {
        return new Step(title, lines, List.of(advice), cautions.isEmpty() ? List.of() : List.of(cautions.split("\\|")));
    }
}
