package greyground.app.recipe;

import greyground.fit.MeasuredResponse;
import greyground.plate.PrintableRange;
import greyground.plate.VirtualResponse;
import greyground.tone.PlateResponse;
import greyground.workshop.KeptResponse;
import greyground.workshop.PlateMaking;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * How the tones of a job's plate print: measured, where the workshop read a test plate that was made alike; otherwise as the virtual
 * plate predicts them.
 *
 * @param predicted by the virtual plate with the workshop's numbers
 * @param kept the measured response in use, if there is one
 * @param note one sentence if test plates were read, but none that fits
 */
public record JobTones(VirtualResponse predicted, Optional<KeptResponse> kept, Optional<String> note) {
    private static final String ADVICE = ": predicted tones are used; etch a test plate";

    /**
     * Chooses: of the measured responses that fit the newest, and the last in the list of one day.
     *
     * @param making how the job's plate will be made
     */
    static JobTones of(VirtualResponse predicted, List<KeptResponse> responses, PlateMaking making) {
        Optional<KeptResponse> fitting = responses.stream()
                .filter(one -> one.making().differencesFrom(making).isEmpty())
                .reduce((before, next) -> next.date().isBefore(before.date()) ? before : next);
        return new JobTones(
                predicted,
                fitting,
                fitting.isPresent() || responses.isEmpty() ? Optional.empty() : note(responses, making));
    }

    /** Tells of the response that comes nearest, the newest of such. */
    private static Optional<String> note(List<KeptResponse> responses, PlateMaking making) {
        return responses.stream()
                .max(Comparator.<KeptResponse>comparingInt(
                                one -> -one.making().differencesFrom(making).size())
                        .thenComparing(KeptResponse::date))
                .map(one -> "tones were " + one.words() + ", for "
                        + String.join("; ", one.making().differencesFrom(making)) + ADVICE);
    }

    public PlateResponse response() {
        return measured().<PlateResponse>map(one -> one).orElse(predicted);
    }

    public Optional<MeasuredResponse> measured() {
        return kept.map(KeptResponse::response);
    }

    public boolean isMeasured() {
        return kept.isPresent();
    }

    /** For legends and records: "measured on 2026-03-04, chart PEGEO" or "predicted, virtual plate, a 40 µm bite". */
    public String name() {
        return kept.map(KeptResponse::words).orElseGet(() -> "predicted, " + predicted.name());
    }

    /** The tones that can be printed in order. */
    public PrintableRange printableRange() {
        return measured().map(MeasuredResponse::printableRange).orElseGet(predicted::printableRange);
    }

    /** Coverage past which more black prints paler; 1 where none does. */
    public double turningPoint() {
        return response().usable().most();
    }

    /** L* of solid black on the film. */
    public double solidLightness() {
        return response().lightness(1);
    }
}
