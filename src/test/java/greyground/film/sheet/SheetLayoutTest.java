package greyground.film.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.film.job.Job;
import greyground.film.job.JobFields;
import greyground.film.job.Told;
import greyground.quantity.FilmPixels;
import greyground.quantity.Refusal;
import greyground.quantity.Resolution;
import greyground.quantity.Size;
import greyground.raster.PixelRect;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SheetLayoutTest {
    private static final List<String> TEXTS = List.of(
            "Mill race at dusk, plate 2 of 3 - 2026-03-31",
            "etched-film, 1440 dpi, grain 180 µm, curve edge growth 8 µm, n 1.7, open bite at 88 %",
            "INK SIDE - these words read right when the ink faces you; so do picture and F",
            "expose 150 s, no separate screen; thin 27 min; harden 10 min; bite 20 min in 42 Be at 20 C",
            "art mill-race-scan-2026-03-12-final-version.tif sha-256"
                    + " 0123456789abcdef0123456789abcdef0123456789abcdef0123456789abcdef");

    @ParameterizedTest
    @CsvSource({
        "148, 210, 1440, 3, 2",
        "210, 148, 1440, 5, 3",
        "100, 150, 720, 0, 0",
        "30, 30, 300, 6, 6",
        "150, 200, 2880, 3, 1",
        "200, 250, 1200, 6, 2",
        "300, 400, 1440, 4, 2",
        "400, 500, 1440, 5, 3",
        "33.3, 271.7, 600, 2.5, 1.2",
    })
    void nothingOverlapsAndNothingTouchesTheArt(double wide, double high, double dpi, double bleed, double bevel) {
        SheetLayout layout = layout(new Size(wide, high), new Resolution(dpi), bleed, bevel);
        PixelRect sheet = new PixelRect(0, 0, layout.width(), layout.height());
        List<PixelRect> things = new ArrayList<>();
        things.add(layout.bleed());
        layout.patches().forEach(patch -> things.add(patch.box()));
        layout.lines().forEach(line -> things.add(line.room()));
        things.addAll(groups(layout));
        for (int i = 0; i < things.size(); i++) {
            assertTrue(
                    things.get(i).right() <= sheet.width() && things.get(i).bottom() <= sheet.height(),
                    things.get(i) + " leaves the sheet " + sheet);
            for (int j = 0; j < i; j++) {
                assertFalse(things.get(i).meets(things.get(j)), things.get(i) + " meets " + things.get(j));
            }
        }
    }

    /** Lines that belong to one drawing may cross; drawings may not: each cross, each ruler and the F count as one. */
    private static List<PixelRect> groups(SheetLayout layout) {
        Resolution resolution = layout.pixels().resolution();
        List<PixelRect> groups = new ArrayList<>();
        List<Mark> register = PlateMarks.register(FilmPixels.of(resolution), layout.plate());
        for (int i = 0; i < register.size(); i += 3) {
            groups.add(around(register.subList(i, i + 3)));
        }
        List<Mark> rulers = PlateMarks.rulers(FilmPixels.of(resolution), layout.plate());
        groups.add(around(rulers.stream()
                .filter(mark -> mark.box().bottom() <= layout.plate().top())
                .toList()));
        groups.add(around(rulers.stream()
                .filter(mark -> mark.box().right() <= layout.plate().left())
                .toList()));
        List<Mark> letter = PlateMarks.asymmetric(FilmPixels.of(resolution), layout.plate());
        groups.add(around(letter));
        int grouped = register.size() + rulers.size() + letter.size();
        List<Mark> others = layout.marks().stream()
                .filter(mark -> !register.contains(mark) && !rulers.contains(mark) && !letter.contains(mark))
                .toList();
        assertEquals(layout.marks().size(), grouped + others.size());
        others.forEach(mark -> groups.add(mark.box()));
        return groups;
    }

    private static PixelRect around(List<Mark> marks) {
        int left = marks.stream().mapToInt(mark -> mark.box().left()).min().orElseThrow();
        int top = marks.stream().mapToInt(mark -> mark.box().top()).min().orElseThrow();
        int right = marks.stream().mapToInt(mark -> mark.box().right()).max().orElseThrow();
        int bottom = marks.stream().mapToInt(mark -> mark.box().bottom()).max().orElseThrow();
        return new PixelRect(left, top, right - left, bottom - top);
    }

    @Test
    void registerMarksDependOnThePlateAlone() {
        Size plate = new Size(200, 250);
        Resolution resolution = new Resolution(1440);
        SheetLayout first = layout(plate, resolution, 0, 0);
        SheetLayout second = SheetLayout.of(
                FilmPixels.of(resolution),
                plate,
                5,
                3,
                Optional.of(new Size(420, 594)),
                List.of("other", "words"),
                TextWidth.GENEROUS);
        assertEquals(fromPlate(first), fromPlate(second));
        assertEquals(first.plate().width(), second.plate().width());
        SheetLayout third = SheetLayout.of(
                FilmPixels.of(resolution), plate, 4, 2, Optional.empty(), List.of("x"), TextWidth.GENEROUS);
        assertEquals(first.plate(), third.plate());
    }

    private static List<PixelRect> fromPlate(SheetLayout layout) {
        PixelRect plate = layout.plate();
        List<Mark> marks = new ArrayList<>(PlateMarks.register(layout.pixels(), plate));
        assertTrue(layout.marks().containsAll(marks));
        return marks.stream()
                .map(Mark::box)
                .map(box -> new PixelRect(
                        box.left() - plate.left() + 100_000,
                        box.top() - plate.top() + 100_000,
                        box.width(),
                        box.height()))
                .toList();
    }

    @Test
    void registerMarksAreAtLeastThreeNotInOneLine() {
        SheetLayout layout = layout(new Size(148, 210), new Resolution(1440), 3, 2);
        List<PixelRect> rings = layout.marks().stream()
                .filter(mark -> mark instanceof Mark.Ring)
                .map(Mark::box)
                .toList();
        assertEquals(4, rings.size());
        long turn = (long) (rings.get(1).left() - rings.get(0).left())
                        * (rings.get(2).top() - rings.get(0).top())
                - (long) (rings.get(1).top() - rings.get(0).top())
                        * (rings.get(2).left() - rings.get(0).left());
        assertTrue(turn != 0);
    }

    @Test
    void rulerTicksStandWithinHalfAPixelOfTheirMillimetre() {
        Resolution resolution = new Resolution(1440);
        SheetLayout layout = layout(new Size(148, 210), resolution, 3, 2);
        List<Integer> ticks = PlateMarks.rulers(FilmPixels.of(resolution), layout.plate()).stream()
                .map(Mark::box)
                .filter(box ->
                        box.bottom() == layout.plate().top() - resolution.pixels(18) && box.height() > box.width())
                .map(PixelRect::left)
                .toList();
        assertEquals(101, ticks.size());
        for (int millimetre = 0; millimetre <= 100; millimetre++) {
            assertEquals(millimetre / 25.4 * 1440, ticks.get(millimetre) - ticks.get(0), 0.5);
        }
    }

    @Test
    void legendsKeepTheirOrderAndLoseNoWord() {
        SheetLayout layout = layout(new Size(100, 150), new Resolution(720), 3, 2);
        String all = String.join(
                " ", layout.lines().stream().map(SheetLayout.Line::text).toList());
        for (String text : TEXTS) {
            assertTrue(all.contains(text), text);
        }
    }

    @Test
    void aFiveFitsTheNextPaperSizeButOne() {
        // ISO 216:2007, A5 148 x 210 mm on A4 210 x 297 mm.
        SheetLayout layout = SheetLayout.of(
                FilmPixels.of(new Resolution(1440)),
                new Size(148, 210),
                3,
                2,
                Optional.of(new Size(210, 297)),
                TEXTS,
                TextWidth.GENEROUS);
        assertEquals(new Resolution(1440).pixels(297), layout.height());
    }

    /** On 120 x 170 mm, where two rows of 126 mm find no room, 60 x 80 mm of plate keep every field, every number and every word apart. */
    @ParameterizedTest
    @CsvSource({
        "beside, 60, 80, 120, 170, 0, 109",
        "offcut, 60, 80, 120, 175, 4, 109",
        "offcut, 148, 210, 210, 320, 4, 126.5",
        "margin, 148, 210, 210, 297, 0, 126.5",
        "none, 60, 80, 120, 170, 0, 0"
    })
    void wedgesFindRoomWhereverTheyLie(
            String place, double wide, double high, double across, double down, int frame, double widest) {
        Job job = Told.as(Map.of("plate", wide + "x" + high + "mm", "strip", place))
                .apply(JobFields.usual());
        Resolution resolution = new Resolution(1440);
        SheetLayout layout = SheetLayout.of(
                FilmPixels.of(resolution),
                job.plate(),
                3,
                2,
                Optional.of(new Size(across, down)),
                List.of("title", "two", "three", "four"),
                WedgeStrip.of(job),
                Double.POSITIVE_INFINITY,
                TextWidth.GENEROUS);
        assertEquals(place.equals("none") ? 0 : 32, layout.patches().size());
        List<PixelRect> things = new ArrayList<>();
        layout.patches().forEach(patch -> things.add(patch.box()));
        layout.lines().forEach(line -> things.add(line.room()));
        layout.marks().forEach(mark -> things.add(mark.box()));
        int fields = layout.patches().size();
        for (int i = 0; i < fields + layout.lines().size(); i++) {
            PixelRect one = things.get(i);
            assertTrue(one.left() >= 0 && one.right() <= layout.width() && one.bottom() <= layout.height(), place);
            for (int j = 0; j < things.size(); j++) {
                assertFalse(i != j && one.meets(things.get(j)), place + ": " + one + " meets " + things.get(j));
            }
        }
        Optional<PixelRect> all = layout.patches().stream().map(Patch::box).reduce(PixelRect::around);
        assertTrue(all.isEmpty() || resolution.millimetres(all.get().width()) <= widest, place);
        long round = layout.marks().stream()
                .map(Mark::box)
                .filter(box -> all.isPresent()
                        && (box.width() >= all.get().width()
                                || box.height() >= all.get().height())
                        && Math.min(box.width(), box.height()) < 10
                        && box.top() > layout.plate().bottom())
                .count();
        assertEquals(frame, round, place + "'s platemark");
    }

    /** The rulers' tallest ticks end 24 - 18 - 4 mm from an automatic sheet's edges; a sheet 10 mm larger each way leaves 5 mm more. */
    @Test
    void saysHowNearToTheEdgesItDraws() {
        SheetLayout automatic = layout(new Size(148, 210), new Resolution(1440), 3, 2);
        assertEquals(2, automatic.clearMillimetres(), 0.02);
        Resolution resolution = new Resolution(1440);
        SheetLayout larger = SheetLayout.of(
                FilmPixels.of(resolution),
                new Size(148, 210),
                3,
                2,
                Optional.of(new Size(
                        resolution.millimetres(automatic.width()) + 10,
                        resolution.millimetres(automatic.height()) + 10)),
                TEXTS,
                TextWidth.GENEROUS);
        assertEquals(7, larger.clearMillimetres(), 0.03);
    }

    @Test
    void refusesASheetTooSmallWithTheNumbers() {
        Refusal refusal = assertThrows(
                Refusal.class,
                () -> SheetLayout.of(
                        FilmPixels.of(new Resolution(1440)),
                        new Size(200, 250),
                        3,
                        2,
                        Optional.of(new Size(210, 297)),
                        TEXTS,
                        TextWidth.GENEROUS));
        assertTrue(refusal.getMessage().contains("210 x 297 mm"), refusal.getMessage());
        assertTrue(refusal.getMessage().contains("248 x "), refusal.getMessage());
    }

    @Test
    void ringIsRoundAndLiesInItsBox() {
        Mark.Ring ring = new Mark.Ring(new PixelRect(10, 20, 283, 283), 5);
        long black = 0;
        for (int y = 0; y < 400; y++) {
            long[] here = new long[1];
            int row = y;
            ring.spans(y, (from, to) -> {
                assertTrue(from >= 10 && to <= 293 && row >= 20 && row < 303 && from <= to);
                here[0] += to - from;
            });
            black += here[0];
        }
        // Area between two circles: pi (R^2 - r^2).
        double area = Math.PI * (141.5 * 141.5 - 136.5 * 136.5);
        assertEquals(area, black, area * 0.01);
    }

    private static SheetLayout layout(Size plate, Resolution resolution, double bleed, double bevel) {
        return SheetLayout.of(
                FilmPixels.of(resolution), plate, bleed, bevel, Optional.empty(), TEXTS, TextWidth.GENEROUS);
    }
}
