package greyground.plate;

import greyground.quantity.RecordWords;
import greyground.quantity.Refusal;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * All that decides what a film becomes on paper.
 *
 * <p>The four processes differ only here: etched film has one exposure and a {@link Bath}; sprayed aquatint adds a ground;
 * photogravure has two exposures, one through the screen; unetched film has {@link FilmRelief} in place of a bath.
 *
 * @param exposures one or more; they add
 * @param resist the film on the copper
 * @param ground sprayed on the developed plate, or null for none
 * @param wells what holds the ink
 * @param wipe the pad
 * @param ink the ink
 * @param paper the paper
 */
public record PlateConditions(
        List<Exposure> exposures,
        Resist resist,
        @Nullable SprayedGround ground,
        Wells wells,
        Wipe wipe,
        Ink ink,
        Paper paper) {
    public PlateConditions {
        exposures = List.copyOf(exposures);
    }

    /** What holds the ink, in a few words, such as "a 40 µm bite". */
    public String wellsName() {
        return wells instanceof Bath bath
                ? "a " + Refusal.plain(Math.rint(bath.depthMicrometres() * 10) / 10) + " µm bite"
                : "unetched";
    }

    /** Depth of the deepest wells there can be. */
    public double deepestMicrometres() {
        return wells instanceof Bath bath ? bath.depthMicrometres() : resist.thicknessMicrometres();
    }

    /** The same plate bitten otherwise. */
    public PlateConditions withWells(Wells other) {
        return new PlateConditions(exposures, resist, ground, other, wipe, ink, paper);
    }

    /** The same plate with nothing sprayed on it. */
    public PlateConditions withoutGround() {
        return new PlateConditions(exposures, resist, null, wells, wipe, ink, paper);
    }

    /** The same plate wiped otherwise. */
    public PlateConditions withWipe(Wipe other) {
        return new PlateConditions(exposures, resist, ground, wells, other, ink, paper);
    }

    /** The same plate under another resist. */
    public PlateConditions withResist(Resist other) {
        return new PlateConditions(exposures, other, ground, wells, wipe, ink, paper);
    }

    /** The same plate printed with another ink. */
    public PlateConditions withInk(Ink other) {
        return new PlateConditions(exposures, resist, ground, wells, wipe, other, paper);
    }

    /** The same plate printed on another paper. */
    public PlateConditions withPaper(Paper other) {
        return new PlateConditions(exposures, resist, ground, wells, wipe, ink, other);
    }

    /** The same plate exposed otherwise. */
    public PlateConditions withExposures(List<Exposure> other) {
        return new PlateConditions(other, resist, ground, wells, wipe, ink, paper);
    }

    /** SHA-256 of every number here, with {@code more} for what else decides a result, in hexadecimal. */
    public String digest(String more) {
        return sha256((RecordWords.of(this) + "\n" + more).getBytes(StandardCharsets.UTF_8));
    }

    /** Names content by its bytes, so that a result once computed can be found again: SHA-256 (FIPS 180-4) in hexadecimal. */
    static String sha256(byte[] bytes) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
        } catch (NoSuchAlgorithmException absent) {
            throw new IllegalStateException("every Java platform has SHA-256", absent);
        }
    }
}
