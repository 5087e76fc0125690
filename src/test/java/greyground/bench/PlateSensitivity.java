package greyground.bench;

import greyground.app.recipe.JobPlate;
import greyground.grain.Grain;
import greyground.plate.VirtualResponse;
import greyground.quantity.Ruling;
import greyground.simulation.HiddenWorkshop;
import greyground.workshop.Figure;
import greyground.workshop.Workshop;
import java.util.Locale;

/** Prints how the response of the usual plate moves with each figure of the workshop, as the table of docs/virtual-plate.md. */
public final class PlateSensitivity {
    private static final double[] TONES = {0.05, 0.3, 0.6};

    private PlateSensitivity() {}

    /** Runs it. */
    public static void main(String[] arguments) {
        Workshop usual = Workshop.assumed();
        Grain grain = new Grain.Stochastic(180, 1);
        row("as assumed", usual, grain);
        each(usual, "bath.biteMinutes", 10, 16, 24, 30);
        each(usual, "bath.etchFactor", 1.5, 3);
        each(usual, "wipe.padRadiusMillimetres", 0.75, 3);
        each(usual, "wipe.plateToneMicrometres", 0.3);
        each(usual, "exposure.targetStep", 5, 9);
        each(usual, "filmPrinter.spotGrowthMicrometres", 0, 8);
        each(usual, "filmPrinter.edgeSoftnessMicrometres", 0, 8);
        each(usual, "light.halfAngleDegrees", 30);
        each(usual, "resist.smallestOpeningMicrometres", 10, 40);
        each(usual, "resist.smallestLandMicrometres", 10, 40);
        each(usual, "ink.strengthPerMicrometre", 0.1, 0.3);
        each(usual, "ink.saturationDensity", 1.4, 1.9);
        each(usual, "ink.transferFraction", 0.6, 0.95);
        each(usual, "ink.spreadMicrometres", 0, 16);
        each(usual, "ink.yuleNielsenFactor", 1, 2);
        each(usual, "paper.whiteDensity", 0.1);
        for (double spacing : new double[] {120, 150, 220, 260, 400}) {
            row("grain " + (int) spacing + " µm", usual, new Grain.Stochastic(spacing, 1));
        }
        for (double ruling : new double[] {40, 60, 80}) {
            row(
                    "round dots " + (int) ruling + "/cm",
                    usual,
                    new Grain.Halftone(new Ruling(ruling), 45, Grain.DotShape.ROUND));
        }
    }

    private static void each(Workshop usual, String path, double... values) {
        for (double value : values) {
            row(path + " " + value, usual.with(path, Figure.assumed(value, "varied")), new Grain.Stochastic(180, 1));
        }
    }

    private static void row(String what, Workshop workshop, Grain grain) {
        VirtualResponse response =
                JobPlate.of(workshop, HiddenWorkshop.job(grain, 1440)).response();
        StringBuilder line = new StringBuilder(String.format(
                Locale.ROOT,
                "| %s | %.1f | %.1f | %.1f |",
                what,
                100 * response.turningPoint(),
                response.printableRange().darkest(),
                response.printableRange().lightGap()));
        for (double tone : TONES) {
            line.append(String.format(Locale.ROOT, " %.1f |", response.lightness(tone)));
        }
        System.out.println(line.append(String.format(Locale.ROOT, " %.1f |", response.lightness(1))));
    }
}
