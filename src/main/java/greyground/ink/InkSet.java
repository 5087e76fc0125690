package greyground.ink;

import greyground.colour.Acceptance;
import greyground.colour.BandsBetween;
import greyground.colour.InkInBands;
import greyground.colour.InkLight;
import greyground.colour.InksInRegister;
import greyground.colour.Lab;
import greyground.colour.MeasuredLight;
import greyground.colour.SmoothSpectrum;
import greyground.ink.PrintingInk.Opacity;
import greyground.quantity.Refusal;
import greyground.workshop.Figure;
import greyground.workshop.InkFigures;
import greyground.workshop.Workshop;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.DoubleStream;

/**
 * The inks of a set, in the order in which their plates are printed, on one paper.
 *
 * @param paper colour of the bare sheet; empty for a grey of the workshop's density
 * @param inks 1 to {@link InksInRegister#MOST_PLATES}, each of another name
 * @param overprints full tones over one another that were measured
 * @param acceptance how much of an ink stays on a wet one
 */
public record InkSet(Optional<Lab> paper, List<PrintingInk> inks, List<Overprint> overprints, Acceptance acceptance) {
    /** Full tones nearer to each other than this look alike side by side (about the least that is seen; from memory). */
    private static final double LEAST_DIFFERENCE = 1;

    /** The virtual plate's ink is no weaker. */
    private static final double LEAST_STRENGTH = 0.01;

    /**
     * Full tones over one another.
     *
     * @param plates their bits, the plate printed first the lowest; two and more
     * @param colour of the place where all of them print full
     */
    public record Overprint(int plates, Lab colour) {}

    public InkSet {
        inks = List.copyOf(inks);
        overprints = List.copyOf(overprints);
        Refusal.checkRange(
                "number of inks",
                inks.size(),
                1,
                InksInRegister.MOST_PLATES,
                "",
                "one plate carries each ink: name one ink and more");
        for (int i = 0; i < inks.size(); i++) {
            for (int k = 0; k < i; k++) {
                if (folded(inks.get(i)).equals(folded(inks.get(k)))) {
                    throw Refusal.use("two inks are named " + inks.get(i).name()
                            + ": films and plan tell plates by their inks, give each another name");
                }
            }
        }
        for (int i = 1; i < inks.size(); i++) {
            if (inks.get(i).opacity() == Opacity.OPAQUE) {
                int plate = i;
                if (overprints.stream().noneMatch(over -> (over.plates() >> plate & 1) != 0)) {
                    throw Refusal.use("ink " + inks.get(i).name() + " is opaque and printed " + ordinal(i + 1)
                            + "; what it hides can't be foretold: print it first, or measure its overprints");
                }
            }
        }
    }

    private static String folded(PrintingInk ink) {
        return ink.name().strip().toLowerCase(Locale.ROOT);
    }

    /** "first" to "sixth". */
    public static String ordinal(int number) {
        return List.of("first", "second", "third", "fourth", "fifth", "sixth").get(number - 1);
    }

    /** Refuses inks that look alike on the workshop's paper: nobody could tell whose plate is on the bed. */
    public void checkApart(Workshop shop) {
        for (int i = 0; i < inks.size(); i++) {
            for (int k = 0; k < i; k++) {
                double apart = fullTone(i, shop).difference(fullTone(k, shop));
                if (apart < LEAST_DIFFERENCE) {
                    throw Refusal.use("inks " + inks.get(k).name() + " and "
                            + inks.get(i).name() + " can't be told apart on this paper, colour difference "
                            + Refusal.plain(Math.rint(apart * 10) / 10)
                            + "; it must be 1 or more: give one of them another colour or strength");
                }
            }
        }
    }

    /** Colour of an ink's usual film on the paper. */
    public Lab fullTone(int ink, Workshop shop) {
        return Lab.of(SmoothSpectrum.colour(
                inBands(ink, shop).onPaper(paperInBands(shop), PrintingInk.USUAL_FILM_MICROMETRES)));
    }

    /** Spectrum of the bare sheet. */
    public double[] paperInBands(Workshop shop) {
        if (paper.isPresent()) {
            return SmoothSpectrum.of(paper.get().xyz())
                    .orElseThrow(() -> Refusal.use("the paper has a colour that no paper has, L* "
                            + Refusal.plain(paper.get().lightness()) + ", a* "
                            + Refusal.plain(paper.get().a()) + ", b* "
                            + Refusal.plain(paper.get().b()) + ": measure it again"));
        }
        double[] grey = new double[SmoothSpectrum.BANDS];
        Arrays.fill(grey, StrictMath.pow(10, -shop.paper().whiteDensity().value()));
        return grey;
    }

    /** What an ink's plate prints in every band: as its test plate did, or foretold from its patch. */
    public InkLight light(int index, Workshop shop) {
        InkInBands ink = inBands(index, shop);
        return inks.get(index)
                .tones()
                .<InkLight>map(tones -> MeasuredLight.of(
                        ink,
                        paperInBands(shop),
                        tones.colours().stream().map(Lab::xyz).toList()))
                .orElseGet(() -> BandsBetween.of(ink, LEAST_STRENGTH));
    }

    /** How dense an ink's films are. */
    public InkInBands inBands(int index, Workshop shop) {
        PrintingInk ink = inks.get(index);
        InkFigures own = shop.ink();
        double greatest = own.saturationDensity().value();
        InkInBands measured = ink.patch()
                .map(Lab::xyz)
                .map(patch -> InkInBands.ofPatch(
                        "ink " + ink.name(), paperInBands(shop), patch, ink.filmMicrometres(), greatest))
                .orElseGet(() ->
                        InkInBands.grey(greatest, own.strengthPerMicrometre().value()));
        return measured.thinned(ink.strength());
    }

    /**
     * The workshop with this ink in the place of its black: as strong as the ink is in the light that it takes most of, so that the plate's tones
     * are set as a densitometer behind the complementary filter sees them. Tones measured with another ink are left out, those of its own test
     * plate taken in.
     */
    public Workshop shop(int index, Workshop shop) {
        PrintingInk ink = inks.get(index);
        if (ink.isWorkshopsOwn()) {
            return shop;
        }
        double strength = inBands(index, shop).strongestPerMicrometre();
        if (!(strength >= InkFigures.STRENGTH.least() && strength <= InkFigures.STRENGTH.most())) {
            throw Refusal.use("ink " + ink.name() + " has a strength of " + Refusal.plain(strength)
                    + " per \u00b5m; it must lie between " + Refusal.plain(InkFigures.STRENGTH.least()) + " and "
                    + Refusal.plain(InkFigures.STRENGTH.most())
                    + ": measure its patch on this paper, or give the film's thickness");
        }
        String basis = "ink " + ink.name() + " of the set, in the light that it takes most of";
        return shop.with("ink.strengthPerMicrometre", Figure.assumed(strength, basis))
                .measuring(ink.tones().map(InkTones::response).stream().toList());
    }

    /** Light from the ink's surface, below which nothing prints: a very thick film's (assumed: all inks alike). */
    public double[] surfaceInBands(Workshop shop) {
        double share = StrictMath.pow(10, -shop.ink().saturationDensity().value());
        return Arrays.stream(paperInBands(shop)).map(light -> light * share).toArray();
    }

    /**
     * What plates of these inks print over one another.
     *
     * @param full what each plate's full tone prints alone, in the order of printing; of the first plates alone where no more are printed
     */
    public InksInRegister inRegister(Workshop shop, List<double[]> full) {
        double[] sheet = paperInBands(shop);
        InksInRegister print = new InksInRegister(sheet, surfaceInBands(shop));
        Map<Integer, double[]> measured = new TreeMap<>();
        for (Overprint over : overprints) {
            if (over.plates() >> full.size() != 0) {
                continue;
            }
            double[] shares = SmoothSpectrum.over(sheet, over.colour().xyz())
                    .orElseThrow(() -> Refusal.use("the overprint of " + names(over.plates())
                            + " has a colour that no inks have on this paper: measure it again"));
            double[] light = new double[sheet.length];
            for (int band = 0; band < light.length; band++) {
                light[band] = sheet[band] * shares[band];
            }
            measured.put(over.plates(), light);
        }
        return measured.isEmpty() && acceptance.isWhole()
                ? print
                : print.withOverprints(shop.ink().yuleNielsenFactor().value(), full, measured, acceptance);
    }

    /** Whether what plates print over one another rests on their full tones, too. */
    public boolean needsFullTones() {
        return !overprints.isEmpty() || !acceptance.isWhole();
    }

    /** What colours over one another rest on, for the first plates: "Foretold from single inks, overprints not measured." */
    public String known(int plates) {
        long measured =
                overprints.stream().filter(over -> over.plates() >> plates == 0).count();
        long all = (1L << plates) - plates - 1;
        String words = measured == 0
                ? "Foretold from single inks, overprints not measured"
                : measured == all
                        ? "Foretold with the overprints that were measured"
                        : "Foretold with " + measured + " of " + all + " overprints measured";
        return words + (plates > 1 && measured < all ? taken() : "") + ".";
    }

    private String taken() {
        if (acceptance.isWhole()) {
            return "; wet ink is assumed to take on all ink";
        }
        DoubleSummaryStatistics shares = DoubleStream.concat(
                        DoubleStream.of(acceptance.usual()),
                        acceptance.pairs().values().stream().mapToDouble(share -> share))
                .summaryStatistics();
        return "; wet ink takes on " + Math.round(100 * shares.getMin())
                + (shares.getMin() == shares.getMax() ? "" : " to " + Math.round(100 * shares.getMax()))
                + " % of an ink over it, as the inks file tells";
    }

    /** Inks by the bits of their plates: "yellow and blue". */
    public String names(int plates) {
        List<String> names = new ArrayList<>();
        for (int i = 0; i < inks.size(); i++) {
            if ((plates >> i & 1) != 0) {
                names.add(inks.get(i).name());
            }
        }
        return String.join(" and ", names);
    }

    /** What is worth a word before a set is made. */
    public List<String> notes() {
        List<String> notes = new ArrayList<>();
        for (int i = 1; i < inks.size(); i++) {
            if (inks.get(i).opacity() == Opacity.HALF) {
                notes.add("ink " + inks.get(i).name() + " is half opaque and lies over others: its overprints are paler"
                        + " than foretold; print it earlier, or measure them");
            }
        }
        if (inks.size() > 1
                && overprints.isEmpty()
                && inks.stream().anyMatch(ink -> ink.patch().isPresent())) {
            notes.add(
                    "colours of overprints are foretold from single inks, none was measured: some 2 to 3 off on average,"
                            + " 9 at worst (CIEDE2000)"
                            + (acceptance.isWhole() ? ", and more where wet ink takes ink badly" : ""));
        }
        return notes;
    }
}
