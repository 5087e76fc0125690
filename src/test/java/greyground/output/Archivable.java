package greyground.output;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.PDFAParser;
import org.verapdf.pdfa.PDFAValidator;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import org.verapdf.pdfa.results.ValidationResult;

/** Asks an outside authority whether a PDF is PDF/A-3b: the veraPDF validation model. */
public final class Archivable {
    private Archivable() {}

    /** Fails with what the validator found. */
    public static void check(byte[] pdf) throws Exception {
        VeraGreenfieldFoundryProvider.initialise();
        try (PDFAParser parser =
                        Foundries.defaultInstance().createParser(new ByteArrayInputStream(pdf), PDFAFlavour.PDFA_3_B);
                PDFAValidator validator = Foundries.defaultInstance().createValidator(PDFAFlavour.PDFA_3_B, false)) {
            ValidationResult result = validator.validate(parser);
            assertTrue(result.isCompliant(), () -> result.getTestAssertions().toString());
            assertTrue(result.getTotalAssertions() > 100, "the validator looked at something");
        }
    }
}
