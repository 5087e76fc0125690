package greyground.app.inks;

import greyground.chart.InkChart;
import greyground.chart.InkPatch;
import greyground.colour.Lab;
import greyground.colour.ScannerFit;
import greyground.colour.ScannerFit.Field;
import greyground.colour.ScannerFit.Signal;
import greyground.colour.Xyz;
import greyground.quantity.Refusal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Collectors;

/**
 * Colours of the fields of a print, from a scanner's signals and what was measured.
 *
 * @param fields those that could be read
 * @param scannerError how far the scanner's colours are off on fields it was not fitted to, root mean square of CIEDE2000; empty where nothing was
 *     measured, so that nobody knows
 * @param words how the colours came about
 */
record PrintColours(List<SeenField> fields, Optional<Double> scannerError, String words) {
    // A field this far from the nearest of its like, and so many times as far as those lie apart, is spoiled (assumed).
    private static final double LEAST_CONTRADICTION = 4;
    private static final double CONTRADICTED = 3;

    /** No scanner is so far off on the print's own fields (assumed). */
    private static final double MOST_ERROR = 8;

    PrintColours {
        fields = List.copyOf(fields);
    }

    /**
     * Works them out. A field that was measured has its measured colour; checks are never fitted to.
     *
     * @param shares what each field sends back of the paper's light, X/Xn, Y and Z/Zn as the scan states them, by the field's number
     * @param sheet the bare sheet as the scan states it
     * @param stated whether the scan says what its colours mean
     */
    static PrintColours of(InkChart chart, Map<Integer, Xyz> shares, Xyz sheet, boolean stated, TypedColours typed) {
        Optional<ScannerFit> fit = typed.fields().isEmpty() ? Optional.empty() : Optional.of(fit(chart, shares, typed));
        List<SeenField> fields = new ArrayList<>();
        for (int i = 0; i < chart.patches().size(); i++) {
            InkPatch patch = chart.patches().get(i);
            Optional<Xyz> scanned = Optional.ofNullable(shares.get(i))
                    .map(share ->
                            fit.map(scanner -> scanner.colour(signal(share))).orElseGet(() -> lit(share, sheet)));
            Optional.ofNullable(typed.fields().get(i))
                    .map(Lab::xyz)
                    .or(() -> scanned)
                    .ifPresent(colour -> fields.add(new SeenField(patch, colour)));
        }
        String words = fit.map(scanner -> String.format(
                        Locale.ROOT,
                        "scanner characterised by %d measured fields of this print, %.1f off on those left out",
                        typed.fields().size(),
                        scanner.error()))
                .orElse(
                        stated
                                ? "by the scan's own colour profile; nobody knows how true that is on these inks"
                                : "the scan says nothing of its colours, sRGB is assumed; only differences within the print"
                                        + " can be told");
        return new PrintColours(fields, fit.map(ScannerFit::error), words);
    }

    private static ScannerFit fit(InkChart chart, Map<Integer, Xyz> shares, TypedColours typed) {
        Map<InkPatch.Role, Integer> colours = new HashMap<>();
        List<Field> known = new ArrayList<>();
        typed.fields().forEach((number, measured) -> {
            InkPatch patch = chart.patches().get(number);
            Xyz share = shares.get(number);
            if (share != null && !patch.role().isCheck()) {
                int colour = colours.computeIfAbsent(patch.role(), any -> colours.size());
                known.add(new Field(colour, signal(share), measured.xyz()));
            }
        });
        typed.sheet().ifPresent(sheet -> known.add(new Field(-1, new Signal(1, 1, 1), sheet.xyz())));
        ScannerFit fit = ScannerFit.of(known);
        if (fit.error() > MOST_ERROR) {
            throw Refusal.failure(String.format(
                    Locale.ROOT,
                    "the colours that were measured are not those of the scan: foretold from the others each is %.1f off"
                            + " (CIEDE2000); measure the very print that was scanned, and check rows and columns",
                    fit.error()));
        }
        return fit;
    }

    private static Signal signal(Xyz share) {
        double[] light = share.light();
        return new Signal(light[0], light[1], light[2]);
    }

    /**
     * The same without fields that two others printed alike contradict: dust, a hand, a place that was wiped otherwise.
     *
     * @param said hears how many
     */
    PrintColours agreeing(Consumer<String> said) {
        List<SeenField> kept = new ArrayList<>(fields);
        Map<InkPatch.Role, List<SeenField>> alike = fields.stream()
                .collect(Collectors.groupingBy(field -> field.patch().role()));
        alike.values().stream().filter(group -> group.size() > 2).forEach(group -> {
            for (SeenField field : group) {
                List<SeenField> others =
                        group.stream().filter(other -> !other.equals(field)).toList();
                double apart = others.stream()
                        .flatMapToDouble(one -> others.stream().mapToDouble(one::differenceFrom))
                        .max()
                        .orElseThrow();
                double nearest =
                        others.stream().mapToDouble(field::differenceFrom).min().orElseThrow();
                if (nearest > Math.max(LEAST_CONTRADICTION, CONTRADICTED * apart)) {
                    kept.remove(field);
                }
            }
        });
        if (kept.size() < fields.size()) {
            int out = fields.size() - kept.size();
            said.accept(out + (out == 1 ? " field is" : " fields are")
                    + " left out, contradicted by the others that were printed alike");
        }
        return new PrintColours(kept, scannerError, words);
    }

    /** Refuses a print without colour. */
    static void checkColoured(Map<Integer, Xyz> shares) {
        double most = shares.values().stream()
                .mapToDouble(share -> Lab.of(share).chroma())
                .max()
                .orElse(0);
        if (most < 2) {
            throw Refusal.failure("the scan holds no colours, its purest field has a chroma of "
                    + Refusal.plain(Math.rint(10 * most) / 10) + ": scan the print in colour");
        }
    }

    private static Xyz lit(Xyz share, Xyz sheet) {
        return new Xyz(
                share.x() * sheet.x() / Xyz.WHITE.x(), share.y() * sheet.y(), share.z() * sheet.z() / Xyz.WHITE.z());
    }
}
