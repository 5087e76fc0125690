package greyground.app.proof;

import greyground.app.recipe.JobPlate;
import greyground.colour.InkLight;
import greyground.plate.Ink;
import greyground.plate.Paper;
import greyground.tone.Lightness;
import greyground.tone.PlateResponse;
import java.util.List;
import java.util.stream.DoubleStream;

/** What even tones of one plate print alone in its ink, band by band. */
public final class InkedTones {
    private final InkLight bands;
    private final double[] sheet;
    private final double bare;
    private final List<PlateResponse> responses;

    /**
     * Asks for the plate's response at each strength of its ink that is needed; where one alone is, it may have been measured.
     *
     * @param sheet light of the bare paper
     */
    public InkedTones(JobPlate plate, InkLight bands, double[] sheet) {
        this.bands = bands;
        this.sheet = sheet.clone();
        Paper paper = plate.conditions().paper();
        this.bare = paper.reflectance(paper.root(0));
        Ink ink = plate.conditions().ink();
        this.responses = bands.strengths().length == 1
                ? List.of(plate.tones().response())
                : DoubleStream.of(bands.strengths())
                        .<PlateResponse>mapToObj(
                                m -> plate.response(plate.conditions().withInk(ink.withDensityPerMicrometre(m))))
                        .toList();
    }

    /** Light of a tone of so much black on the film, 0 to 1. */
    public double[] light(double coverage) {
        double[] logarithms = responses.stream()
                .mapToDouble(response -> StrictMath.log(Lightness.toLuminance(response.lightness(coverage)) / bare))
                .toArray();
        double[] light = sheet.clone();
        for (int band = 0; band < light.length; band++) {
            light[band] *= StrictMath.exp(bands.logarithm(band, logarithms));
        }
        return light;
    }
}
