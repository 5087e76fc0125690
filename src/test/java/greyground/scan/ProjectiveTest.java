package greyground.scan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.fail;
import static org.junit.jupiter.api.Assumptions.abort;

import greyground.quantity.Refusal;
import greyground.scan.Projective.Pair;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;

class ProjectiveTest {
    private static final List<Pair> CORNERS = List.of(
            new Pair(0, 0, 141.7, 344),
            new Pair(150_000, 0, 1822.2, 141.7),
            new Pair(150_000, 200_000, 2137.5, 2664.3),
            new Pair(0, 200_000, 343.3, 2784.1));

    /** scikit-image's ProjectiveTransform through the same four pairs sends other places to the same pixels. */
    @Test
    void fourCornersGiveTheMapThatScikitImageFinds() throws Exception {
        StringBuilder script = new StringBuilder(
                "import numpy as np\n" + "from skimage.transform import estimate_transform\nsrc=[]; dst=[]\n");
        for (Pair pair : CORNERS) {
            script.append(String.format(
                    Locale.ROOT,
                    "src.append([%f,%f]); dst.append([%f,%f])%n",
                    pair.plateX(),
                    pair.plateY(),
                    pair.scanX(),
                    pair.scanY()));
        }
        script.append("t=estimate_transform('projective',np.array(src),np.array(dst))\n"
                + "for x in (20000,75000,160000):\n for y in (-5000,90000,199000):\n"
                + "  print('%.9f %.9f'%tuple(t([[x,y]])[0]))\n");
        String[] said = python(script.toString()).split("\n", -1);
        Projective map = Projective.through(CORNERS, true);
        int line = 0;
        for (double x : new double[] {20_000, 75_000, 160_000}) {
            for (double y : new double[] {-5_000, 90_000, 199_000}) {
                String[] theirs = said[line++].split(" ", -1);
                assertEquals(Double.parseDouble(theirs[0]), map.x(x, y), 1e-6);
                assertEquals(Double.parseDouble(theirs[1]), map.y(x, y), 1e-6);
            }
        }
        assertEquals(9, line);
    }

    private static String python(String script) throws Exception {
        String answer = "";
        // Debian's own first: another python on the path may lack the package.
        for (String each : new String[] {"/usr/bin/python3", "python3"}) {
            if (answer.isEmpty()) {
                answer = answer(each, script);
            }
        }
        if (answer.isEmpty()) {
            if ("true".equals(System.getenv("CI"))) {
                fail("python3 with scikit-image is needed to check maps, and it gave no answer");
            }
            abort("python3 with scikit-image is not here");
        }
        return answer;
    }

    private static String answer(String python, String script) throws InterruptedException {
        try {
            Process asked = new ProcessBuilder(python, "-c", script)
                    .redirectError(ProcessBuilder.Redirect.DISCARD)
                    .start();
            String said = new String(asked.getInputStream().readAllBytes(), StandardCharsets.US_ASCII).strip();
            return asked.waitFor() == 0 ? said : "";
        } catch (IOException absent) {
            return "";
        }
    }

    /** A map after its inverse leaves every place where it was. */
    @Test
    void thereAndBackIsNowhere() {
        Projective map = Projective.through(CORNERS, true);
        Projective back = map.inverse();
        for (double x : new double[] {0, 12_345, 150_000}) {
            assertEquals(x, back.x(map.x(x, 777), map.y(x, 777)), 1e-6);
            assertEquals(777, back.y(map.x(x, 777), map.y(x, 777)), 1e-6);
        }
    }

    /** The direct linear transform is exact for any number of pairs that one map explains. */
    @Test
    void morePairsThanNeededAgree() {
        Projective map = Projective.through(CORNERS, true);
        List<Pair> many = java.util.stream.IntStream.range(0, 30)
                .mapToObj(i -> {
                    double x = 5_000.0 * i;
                    double y = 7_919.0 * i % 200_000;
                    return new Pair(x, y, map.x(x, y), map.y(x, y));
                })
                .toList();
        Projective again = Projective.through(many, true);
        assertEquals(map.x(33_000, 150_000), again.x(33_000, 150_000), 1e-6);
        assertEquals(map.y(33_000, 150_000), again.y(33_000, 150_000), 1e-6);
    }

    @Test
    void tooFewOrFlatPairsAreRefused() {
        assertThrows(Refusal.class, () -> Projective.through(CORNERS.subList(0, 3), true));
        List<Pair> line =
                List.of(new Pair(0, 0, 0, 0), new Pair(1, 0, 1, 0), new Pair(2, 0, 2, 0), new Pair(3, 0, 3, 0));
        assertThrows(Refusal.class, () -> Projective.through(line, true));
    }
}
