package greyground.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.fail;
import static org.junit.jupiter.api.Assumptions.abort;

import greyground.tone.IsotonicFit;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** The statistics against published worked examples and against SciPy and NumPy, where Python has them. */
class MeasuredStatisticsTest {
    /** Example data of Rosner 1983, as in the NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.17.3. */
    private static final double[] ROSNER = {
        -0.25, 0.68, 0.94, 1.15, 1.20, 1.26, 1.26, 1.34, 1.38, 1.43, 1.49, 1.49, 1.55, 1.56, 1.58, 1.65, 1.69, 1.70,
        1.76, 1.77, 1.81, 1.91, 1.94, 1.96, 1.99, 2.06, 2.09, 2.10, 2.14, 2.15, 2.23, 2.24, 2.26, 2.35, 2.37, 2.40,
        2.47, 2.54, 2.62, 2.64, 2.90, 2.92, 2.92, 2.93, 3.21, 3.26, 3.30, 3.59, 3.68, 4.30, 4.64, 5.34, 5.42, 6.01
    };

    private static List<MeasuredPatch> oneLevel(double... readings) {
        return Arrays.stream(readings)
                .mapToObj(reading -> new MeasuredPatch(0.5, reading, 0, 0, 1))
                .toList();
    }

    /** Studentized with the reading itself in the estimate, as the published tables have it. */
    private static double published(double external, int degrees, int count) {
        double square = external * external * (degrees + 1) / (degrees + external * external);
        return Math.sqrt(square * (1 - 1.0 / count));
    }

    /**
     * Statistics and critical values at 5 % as the e-Handbook prints them (from memory, matched by its data), cut to three decimals; it
     * finds three outliers.
     */
    @Test
    void severalOutliersAsInTheHandbook() {
        double[] statistics = {3.118, 2.942, 3.179, 2.810, 2.815, 2.848, 2.279, 2.310, 2.101, 2.067};
        double[] critical = {3.158, 3.151, 3.143, 3.136, 3.128, 3.120, 3.111, 3.103, 3.094, 3.085};
        List<MeasuredPatch> patches =
                oneLevel(Arrays.stream(ROSNER).map(reading -> reading + 50).toArray());
        List<MeasuredOutliers.Step> steps = MeasuredOutliers.steps(patches, List.of(), 10);
        for (int i = 0; i < 10; i++) {
            MeasuredOutliers.Step step = steps.get(i);
            int count = ROSNER.length - i;
            assertEquals(statistics[i], published(step.deviate(), step.degrees(), count), 1e-3, "step " + (i + 1));
            assertEquals(critical[i], published(step.critical(), step.degrees(), count), 1e-3, "step " + (i + 1));
        }
        assertEquals(patches.subList(0, ROSNER.length - 3), MeasuredOutliers.kept(patches, List.of()));
    }

    /** Grubbs's test, e-Handbook 1.3.5.17.1: eight mass-spectrometer readings, G = 2.4687; scaled here to fit below 100. */
    @Test
    void oneOutlierAsInTheHandbook() {
        double[] readings = {199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57};
        List<MeasuredPatch> patches =
                oneLevel(Arrays.stream(readings).map(reading -> reading / 4).toArray());
        MeasuredOutliers.Step step =
                MeasuredOutliers.steps(patches, List.of(), 1).get(0);
        assertEquals(patches.get(7), step.patch());
        assertEquals(2.4687, published(step.deviate(), step.degrees(), 8), 1e-4);
        assertFalse(MeasuredOutliers.kept(patches, List.of()).contains(patches.get(7)));
    }

    /** Runs a script with rows of numbers on its input. */
    static double[] python(String script, List<double[]> rows) {
        String text = rows.stream()
                .map(row -> Arrays.stream(row)
                        .mapToObj(value -> String.format(Locale.ROOT, "%.17g", value))
                        .collect(Collectors.joining(" ")))
                .collect(Collectors.joining("\n"));
        String answer;
        try {
            Process python = new ProcessBuilder("python3", "-c", script).start();
            try (var in = python.getOutputStream()) {
                in.write(text.getBytes(StandardCharsets.US_ASCII));
            }
            answer = new String(python.getInputStream().readAllBytes(), StandardCharsets.US_ASCII).trim();
        } catch (IOException absent) {
            answer = "";
        }
        if (answer.isEmpty()) {
            if ("true".equals(System.getenv("CI"))) {
                fail("python3 with scipy is needed to check the statistics, and it gave no answer");
            }
            abort("python3 with scipy is not here");
        }
        return Arrays.stream(answer.split("\\s+"))
                .mapToDouble(Double::parseDouble)
                .toArray();
    }

    /** scipy.optimize.isotonic_regression on seeded readings and weights. */
    @Test
    void isotonicFitsAgreeWithSciPy() {
        Random random = new Random(11);
        double[] readings = new double[60];
        double[] weights = new double[60];
        for (int i = 0; i < 60; i++) {
            readings[i] = 90 - i + 6 * random.nextGaussian();
            weights[i] = 0.2 + random.nextDouble();
        }
        double[] theirs = python(
                "import sys,numpy as np\nfrom scipy.optimize import isotonic_regression as f\n"
                        + "y,w=[np.array(l.split(),float) for l in sys.stdin]\n"
                        + "print(*f(y,weights=w,increasing=False).x)",
                List.of(readings, weights));
        double[] ours = IsotonicFit.falling(readings, weights).fitted();
        for (int i = 0; i < 60; i++) {
            assertEquals(theirs[i], ours[i], 1e-9);
        }
    }

    /** Plane, curvature and their chances against numpy.linalg.lstsq on the full design and scipy.stats.f. */
    @Test
    void driftAgreesWithAFullLeastSquaresFit() {
        List<MeasuredPatch> patches = weighted(3);
        MeasuredResiduals flat = MeasuredResiduals.of(patches, List.of());
        MeasuredResiduals slanted = MeasuredResiduals.of(patches, MeasuredTrend.slant(patches));
        double[] theirs = python(
                "import sys,numpy as np\nfrom scipy.stats import f\n"
                        + "c,l,x,y,w=[np.array(t.split(),float) for t in sys.stdin]\n"
                        + "w=w/w.mean();r=np.sqrt(w)\n"
                        + "D=(c[:,None]==np.unique(c)[None,:]).astype(float)\n"
                        + "P=np.c_[D,(x-(x.min()+x.max())/2)/100,(y-(y.min()+y.max())/2)/100]\n"
                        + "def fit(M):\n"
                        + "  b=np.linalg.lstsq(M*r[:,None],l*r,rcond=None)[0]\n"
                        + "  return b,((l-M@b)**2*w).sum(),len(l)-np.linalg.matrix_rank(M)\n"
                        + "a,sa,da=fit(D);b,sb,db=fit(P)\n"
                        + "H=P*r[:,None]@np.linalg.pinv(P*r[:,None])\n"
                        + "print(b[-2],b[-1],sa,sb,da,db,f.sf((sa-sb)/(da-db)/(sb/db),da-db,db),H[0,0],H[7,7])",
                rows(patches));
        double[] ours = {
            slanted.slopes().getEntry(0),
            slanted.slopes().getEntry(1),
            flat.sum(),
            slanted.sum(),
            flat.degrees(),
            slanted.degrees(),
            MeasuredTrend.chance(flat, slanted),
            slanted.leverage().getEntry(0),
            slanted.leverage().getEntry(7)
        };
        for (int i = 0; i < ours.length; i++) {
            assertEquals(theirs[i], ours[i], 1e-8 * Math.max(1, Math.abs(theirs[i])), "number " + i);
        }
    }

    /** scipy.signal.lombscargle with floating mean, normalised: the share of the sum of squares that a wave takes. */
    @Test
    void bandsAgreeWithAPublishedPeriodogram() {
        Random random = new Random(5);
        List<MeasuredPatch> patches = new ArrayList<>();
        for (int i = 0; i < 40; i++) {
            double x = 100 * random.nextDouble();
            double lightness = 50 + Math.sin(x / 3) + random.nextGaussian();
            patches.add(new MeasuredPatch(0.5, lightness, x, 0, 1));
        }
        double[] frequencies = {0.02, 0.035, 0.053, 0.08, 0.11};
        List<MeasuredBands.Power> powers =
                MeasuredBands.powers(patches, List.of(), MeasuredBands.Axis.ACROSS, frequencies);
        List<double[]> rows = new ArrayList<>(rows(patches).subList(1, 3));
        rows.add(frequencies);
        double[] theirs = python(
                "import sys,numpy as np\nfrom scipy.signal import lombscargle\n"
                        + "l,x,f=[np.array(t.split(),float) for t in sys.stdin]\n"
                        + "print(*lombscargle(x,l,2*np.pi*f,floating_mean=True,normalize=True))",
                rows);
        for (int i = 0; i < frequencies.length; i++) {
            assertEquals(theirs[i], powers.get(i).share(), 1e-9, "frequency " + frequencies[i]);
        }
    }

    private static List<MeasuredPatch> weighted(long seed) {
        Random random = new Random(seed);
        return InventedPlate.read(InventedPlate::turning, 3, 0.8, seed, (x, y) -> 0.01 * x).stream()
                .map(one -> new MeasuredPatch(
                        one.coverage(),
                        one.lightness(),
                        one.xMillimetres(),
                        one.yMillimetres(),
                        0.3 + random.nextDouble()))
                .sorted(Comparator.comparingDouble(MeasuredPatch::coverage))
                .toList();
    }

    private static List<double[]> rows(List<MeasuredPatch> patches) {
        return List.of(
                patches.stream().mapToDouble(MeasuredPatch::coverage).toArray(),
                patches.stream().mapToDouble(MeasuredPatch::lightness).toArray(),
                patches.stream().mapToDouble(MeasuredPatch::xMillimetres).toArray(),
                patches.stream().mapToDouble(MeasuredPatch::yMillimetres).toArray(),
                patches.stream().mapToDouble(MeasuredPatch::weight).toArray());
    }
}
