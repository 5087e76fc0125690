package greyground.app.inks;

import greyground.chart.InkChart;
import greyground.chart.InkPatch;
import greyground.chart.InkPatch.Full;
import greyground.chart.InkPatch.Ramp;
import greyground.chart.InkPatch.Role;
import greyground.colour.Acceptance;
import greyground.colour.InkInBands;
import greyground.colour.InkLight;
import greyground.colour.InksInRegister;
import greyground.colour.Lab;
import greyground.colour.MeasuredLight;
import greyground.colour.SmoothSpectrum;
import greyground.colour.Xyz;
import greyground.fit.MeasuredLevel;
import greyground.fit.MeasuredPatch;
import greyground.fit.MeasuredResponse;
import greyground.ink.InkSet;
import greyground.ink.InkSet.Overprint;
import greyground.ink.InkTones;
import greyground.ink.PrintingInk;
import greyground.quantity.Refusal;
import greyground.tone.Confidence;
import greyground.tone.Lightness;
import greyground.workshop.InkFigures;
import greyground.workshop.KeptResponse;
import greyground.workshop.PlateMaking;
import greyground.workshop.Workshop;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * What the print of inks' test plates teaches: the paper as it lies within the platemark, each ink's colour and tones, and full tones over one another
 * that the inks alone don't foretell. Fields that check are never fitted to; how far they are off is what the colours are worth.
 *
 * @param learnt the inks as they printed
 * @param overprints full tones over one another, each with how far it lies from what was foretold
 * @param checks how far each check is off, CIEDE2000, in the order of the chart
 * @param wiping deviation of one field from others that were printed alike, root mean square of CIEDE2000
 * @param doubt within which the colours lie, 95 %, CIEDE2000; empty where nobody knows how true the scanner's colours are
 */
record InkLesson(
        InkSet learnt, List<SeenOverprint> overprints, List<Double> checks, double wiping, Optional<Double> doubt) {
    /** Full tones nearer to bare paper than this say that a plate was not printed. */
    private static final double LEAST_PRINT = 2;

    /** Share of the greatest density past which a patch tells an ink's strength badly (assumed). */
    private static final double MOST_SHARE = 0.9;

    /**
     * Full tones over one another.
     *
     * @param off CIEDE2000 between what was foretold and what was measured
     * @param doubt u of that difference
     * @param taken whether the measured colour takes the product's place
     * @param stays share of the last ink's density that stayed on the others
     */
    record SeenOverprint(int plates, Lab colour, double off, double doubt, boolean taken, double stays) {}

    InkLesson {
        overprints = List.copyOf(overprints);
        checks = List.copyOf(checks);
    }

    /**
     * What the reading rests on.
     *
     * @param inks as they were believed to be
     * @param makings how each plate was made
     * @param strengths of each ink as it was believed to be, in the light that it takes most of, per µm
     * @param how the print was read, one line
     */
    record Told(
            InkChart chart,
            InkSet inks,
            Workshop shop,
            List<PlateMaking> makings,
            List<Double> strengths,
            LocalDate date,
            String how) {}

    static InkLesson of(Told told, PrintColours print) {
        return new Learning(told, print).lesson();
    }

    /** One lesson in the making. */
    private static final class Learning {
        private final Told told;
        private final PrintColours print;
        private final Map<Role, List<SeenField>> groups = new LinkedHashMap<>();
        private final double[] paper;
        private final double paperLight;
        private final List<MeasuredResponse> responses = new ArrayList<>();
        private final double wiping;
        private final int degrees;

        Learning(Told told, PrintColours print) {
            this.told = told;
            this.print = print;
            print.fields()
                    .forEach(field -> groups.computeIfAbsent(field.patch().role(), none -> new ArrayList<>())
                            .add(field));
            Xyz bare = mean(new Full(0));
            this.paper = SmoothSpectrum.of(bare)
                    .orElseThrow(() -> Refusal.failure("the print's bare fields have a colour that no paper has, "
                            + words(Lab.of(bare)) + ": measure them again"));
            this.paperLight =
                    StrictMath.pow(10, -told.shop().paper().whiteDensity().value());
            double squares = 0;
            int free = 0;
            for (List<SeenField> group : groups.values()) {
                Lab middle = Lab.of(mean(group));
                for (SeenField field : group) {
                    double off = Lab.of(field.colour()).difference(middle);
                    squares += off * off;
                }
                free += group.size() - 1;
            }
            this.degrees = Math.max(1, free);
            this.wiping = StrictMath.sqrt(squares / degrees);
        }

        private static String words(Lab lab) {
            return "L* " + tenth(lab.lightness()) + ", a* " + tenth(lab.a()) + ", b* " + tenth(lab.b());
        }

        private static String tenth(double value) {
            return Refusal.plain(Math.rint(10 * value) / 10);
        }

        private List<SeenField> group(Role role) {
            return groups.getOrDefault(role, List.of());
        }

        private Xyz mean(Role role) {
            List<SeenField> group = group(role);
            if (group.isEmpty()) {
                throw Refusal.failure("no field of "
                        + (role instanceof Full full
                                ? full.plates() == 0
                                        ? "bare paper"
                                        : "the full tone of " + told.inks().names(full.plates())
                                : "a tone")
                        + " could be read: all are spoiled or hidden; pull another print");
            }
            return mean(group);
        }

        private static Xyz mean(List<SeenField> group) {
            double x = 0;
            double y = 0;
            double z = 0;
            for (SeenField field : group) {
                x += field.colour().x() / group.size();
                y += field.colour().y() / group.size();
                z += field.colour().z() / group.size();
            }
            return new Xyz(x, y, z);
        }

        InkLesson lesson() {
            Lab bare = Lab.of(mean(new Full(0)));
            List<PrintingInk> inks = new ArrayList<>();
            for (int plate = 0; plate < told.chart().tones().size(); plate++) {
                double apart = Lab.of(mean(new Full(1 << plate))).difference(bare);
                if (apart < LEAST_PRINT) {
                    throw Refusal.failure("plate " + (plate + 1) + ", "
                            + told.inks().inks().get(plate).name()
                            + ", printed nothing: its full tone differs from bare"
                            + " paper by " + tenth(apart) + "; print all plates of the set over one another");
                }
                inks.add(ink(plate));
            }
            InkSet single = new InkSet(Optional.of(bare), inks, List.of(), Acceptance.WHOLE);
            List<SeenOverprint> overprints = new ArrayList<>();
            InkSet learnt = single;
            List<Integer> over = IntStream.range(0, 1 << inks.size())
                    .filter(plates -> Integer.bitCount(plates) > 1)
                    .boxed()
                    .sorted(Comparator.comparingInt(Integer::bitCount))
                    .toList();
            for (int plates : over) {
                SeenOverprint seen = overprint(learnt, plates);
                overprints.add(seen);
                if (seen.taken()) {
                    List<Overprint> more = new ArrayList<>(learnt.overprints());
                    more.add(new Overprint(plates, seen.colour()));
                    learnt = new InkSet(learnt.paper(), inks, more, Acceptance.WHOLE);
                }
            }
            List<Double> checks = checks(learnt);
            double model = StrictMath.sqrt(
                    checks.stream().mapToDouble(off -> off * off).average().orElse(0));
            double ofWiping = Confidence.quantile(0.95, degrees) * wiping;
            Optional<Double> doubt = print.scannerError()
                    .map(scanner -> StrictMath.sqrt(4 * scanner * scanner + ofWiping * ofWiping + 4 * model * model));
            return new InkLesson(learnt, overprints, checks, wiping, doubt);
        }

        /** An ink as it printed. Its patch is the darkest tone whose density still tells its strength. */
        private PrintingInk ink(int plate) {
            PrintingInk before = told.inks().inks().get(plate);
            InkFigures own = told.shop().ink();
            double greatest = own.saturationDensity().value();
            List<Role> darkFirst = new ArrayList<>(List.of(new Full(1 << plate)));
            for (int step = InkChart.RAMP - 1; step >= 0; step--) {
                darkFirst.add(new Ramp(plate, step));
            }
            for (Role role : darkFirst) {
                Optional<double[]> shares =
                        groups.containsKey(role) ? SmoothSpectrum.over(paper, mean(role)) : Optional.empty();
                double densest = shares.map(each ->
                                -StrictMath.log10(Arrays.stream(each).min().orElseThrow()))
                        .orElse(Double.MAX_VALUE);
                if (densest < MOST_SHARE * greatest) {
                    Lab patch = Lab.of(mean(role));
                    double film = film(plate, densest, greatest);
                    InkInBands ink = InkInBands.ofPatch("ink " + before.name(), paper, patch.xyz(), film, greatest);
                    return new PrintingInk(
                            before.name(),
                            Optional.of(patch),
                            film,
                            1,
                            before.opacity(),
                            Optional.of(tones(plate, ink)));
                }
            }
            throw Refusal.failure("the tones of ink " + before.name()
                    + " have colours that no ink has on this paper: measure" + " them and the paper in the same light");
        }

        private double coverage(Role role, int plate) {
            return group(role).get(0).patch().coveragePerMille().get(plate) / 1000.0;
        }

        /**
         * How thick a film the patch is, if its ink is as strong as it was believed to be. So the virtual plate's darkest tone stays that of the test
         * plate, and its tones are moved onto the measured ones all the way.
         */
        private double film(int plate, double density, double greatest) {
            double film =
                    -StrictMath.log1p(-density / greatest) / told.strengths().get(plate);
            return Math.max(InkInBands.FILM.least(), Math.min(InkInBands.FILM.most(), film));
        }

        private InkTones tones(int plate, InkInBands ink) {
            List<Role> roles = new ArrayList<>(List.of(new Full(0), new Full(1 << plate)));
            for (int step = 0; step < InkChart.RAMP; step++) {
                roles.add(new Ramp(plate, step));
            }
            roles.removeIf(role -> !groups.containsKey(role));
            MeasuredLight light = MeasuredLight.of(
                    ink, paper, roles.stream().skip(1).map(this::mean).toList());
            List<MeasuredPatch> patches = new ArrayList<>();
            for (Role role : roles) {
                for (SeenField field : group(role)) {
                    double share = role.equals(new Full(0)) ? 0 : light.place(paper, field.colour());
                    patches.add(new MeasuredPatch(
                            coverage(role, plate),
                            Lightness.ofLuminance(paperLight * StrictMath.exp(share)),
                            field.patch().area().middleX() / 1000,
                            field.patch().area().middleY() / 1000,
                            1));
                }
            }
            MeasuredResponse response = MeasuredResponse.of(
                    "measured on " + told.date() + ", chart " + told.chart().id(), patches);
            responses.add(response);
            List<Lab> colours = new ArrayList<>();
            for (MeasuredLevel level : response.levels()) {
                colours.add(roles.stream()
                        .filter(role -> coverage(role, plate) == level.coverage())
                        .findFirst()
                        .map(role -> Lab.of(mean(role)))
                        .orElseThrow());
            }
            return new InkTones(
                    new KeptResponse(
                            told.date(),
                            told.chart().id(),
                            told.how(),
                            told.makings().get(plate),
                            response.levels(),
                            List.of()),
                    colours);
        }

        /** What a plate prints alone at a film coverage. */
        private double[] alone(InkSet inks, int plate, double coverage) {
            double share =
                    Math.min(1, Lightness.toLuminance(responses.get(plate).lightness(coverage)) / paperLight);
            double[] own = {StrictMath.log(Math.max(1e-6, share))};
            double[] light = paper.clone();
            InkLight ink = inks.light(plate, told.shop());
            for (int band = 0; band < light.length; band++) {
                light[band] *= StrictMath.exp(ink.logarithm(band, own));
            }
            return light;
        }

        private Lab foretold(InkSet inks, List<Integer> coveragePerMille) {
            List<double[]> full = new ArrayList<>();
            List<double[]> alone = new ArrayList<>();
            for (int plate = 0; plate < coveragePerMille.size(); plate++) {
                full.add(alone(inks, plate, told.chart().tones().get(plate).full() / 1000.0));
                alone.add(alone(inks, plate, coveragePerMille.get(plate) / 1000.0));
            }
            InksInRegister print = inks.inRegister(told.shop(), full);
            return Lab.of(SmoothSpectrum.colour(print.print(alone)));
        }

        private SeenOverprint overprint(InkSet before, int plates) {
            Role role = new Full(plates);
            Xyz measured = mean(role);
            Lab colour = Lab.of(measured);
            List<SeenField> group = group(role);
            double off =
                    foretold(before, group.get(0).patch().coveragePerMille()).difference(colour);
            double scanner = print.scannerError().orElse(0.0);
            double means = wiping * wiping / group.size();
            double doubt = StrictMath.sqrt(scanner * scanner + (1 + Integer.bitCount(plates)) * means);
            return new SeenOverprint(plates, colour, off, doubt, off > 2 * doubt, stays(plates, measured));
        }

        private double stays(int plates, Xyz measured) {
            int last = 31 - Integer.numberOfLeadingZeros(plates);
            double[] upper = MeasuredLight.shares(paper, mean(new Full(1 << last)));
            double[] below = MeasuredLight.shares(paper, mean(new Full(plates & ~(1 << last))));
            double[] both = MeasuredLight.shares(paper, measured);
            int strongest = IntStream.range(0, upper.length)
                    .reduce((one, other) -> upper[other] < upper[one] ? other : one)
                    .orElseThrow();
            return (StrictMath.log(both[strongest]) - StrictMath.log(below[strongest]))
                    / StrictMath.log(upper[strongest]);
        }

        private List<Double> checks(InkSet learnt) {
            List<Double> off = new ArrayList<>();
            groups.forEach((role, group) -> {
                if (role.isCheck()) {
                    InkPatch patch = group.get(0).patch();
                    Lab wished = foretold(learnt, patch.coveragePerMille());
                    group.forEach(field -> off.add(wished.difference(Lab.of(field.colour()))));
                }
            });
            return off;
        }
    }
}
