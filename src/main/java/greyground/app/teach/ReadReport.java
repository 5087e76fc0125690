package greyground.app.teach;

import greyground.app.sight.LivePicture;
import greyground.fit.CheckResult;
import greyground.fit.FigureChange;
import greyground.fit.FittedFigure;
import greyground.quantity.Refusal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a reading says, in parts, for a window.
 *
 * @param title kind and chart
 * @param how it was read, one line
 * @param findings named sentences
 * @param numbers of the workshop that it changes, or can't tell
 * @param response the tones, where the plate has a wedge
 * @param check tone by tone, where it is a check plate
 * @param scan with what was read drawn over it
 * @param notes one sentence each
 */
public record ReadReport(
        String title,
        String how,
        List<Finding> findings,
        List<Figure> numbers,
        Optional<ResponseLines> response,
        Optional<Check> check,
        Optional<LivePicture> scan,
        List<String> notes) {
    public ReadReport {
        findings = List.copyOf(findings);
        numbers = List.copyOf(numbers);
        notes = List.copyOf(notes);
    }

    /**
     * A sentence.
     *
     * @param name what it is about, a word or two
     */
    public record Finding(String name, String words) {}

    /** One of the workshop's numbers. */
    public sealed interface Figure {
        /** In the workshop's file, such as "bath.etchFactor". */
        String path();

        /** What the workshop says now. */
        double before();

        /**
         * It was determined.
         *
         * @param known how the old value was known
         * @param low end of the 95 % interval
         * @param high end of the 95 % interval
         */
        record Learned(String path, double before, String known, double after, double low, double high)
                implements Figure {
            static Learned of(FigureChange change) {
                return new Learned(
                        change.path(),
                        change.before(),
                        change.beforeProvenance(),
                        change.after(),
                        change.after() - change.half95(),
                        change.after() + change.half95());
            }

            /** The fit's own interval, which need not lie evenly about the value. */
            static Learned of(FigureChange change, List<FittedFigure> fitted) {
                return fitted.stream()
                        .filter(each -> each.parameter().path().equals(change.path()))
                        .filter(FittedFigure.Determined.class::isInstance)
                        .map(FittedFigure.Determined.class::cast)
                        .findFirst()
                        .map(one -> new Learned(
                                change.path(),
                                change.before(),
                                change.beforeProvenance(),
                                change.after(),
                                one.low(),
                                one.high()))
                        .orElseGet(() -> of(change));
            }
        }

        /** It could not be told, and stays. */
        record Stays(String path, double before, String why) implements Figure {}
    }

    /**
     * How a check plate's tones came out.
     *
     * @param tolerance L* that is as good as right
     * @param verdict in a sentence
     * @param worst what the worst tone is off, in L*
     */
    public record Check(List<Tone> tones, double tolerance, String verdict, double worst, double rootMeanSquare) {
        public Check {
            tones = List.copyOf(tones);
        }

        /**
         * One tone, in L*.
         *
         * @param stated where it should print
         * @param off printed less stated
         * @param half95 half the interval; infinite for a single reading
         * @param before what a film made without the calibration would have been off
         */
        public record Tone(
                double coverage, double stated, double printed, double off, double half95, OptionalDouble before) {}

        static Check of(CheckResult result) {
            return new Check(
                    result.lines().stream()
                            .map(line -> new Tone(
                                    line.coverage(),
                                    line.stated(),
                                    line.mean(),
                                    line.off(),
                                    line.half95(),
                                    line.before()))
                            .toList(),
                    CheckResult.TOLERANCE,
                    result.verdict(),
                    result.worst().off(),
                    result.rootMeanSquare());
        }
    }

    static Finding misfit(double misfit) {
        return new Finding(
                "Misfit",
                Refusal.plain(Math.rint(10 * misfit) / 10) + "; near 1 where the virtual plate explains the print");
    }
}
