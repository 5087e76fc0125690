package greyground.chart;

import com.google.zxing.EncodeHintType;
import com.google.zxing.WriterException;
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel;
import com.google.zxing.qrcode.encoder.ByteMatrix;
import com.google.zxing.qrcode.encoder.Encoder;
import greyground.quantity.Refusal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * A matrix code (ISO/IEC 18004, version 2, correction level Q) that names the plate and the place where it stands. It has room for
 * just {@value CodeText#LENGTH} letters and digits.
 *
 * @param area its modules, without the quiet zone
 * @param place which of the plate's codes it is, 0 to 9
 * @param text what it says
 */
public record CornerCode(Area area, int place, String text) {
    /** Modules along a side of version 2. */
    public static final int MODULES = 25;

    /** Clear modules on every side (ISO/IEC 18004). */
    public static final int QUIET = 4;

    /** Side with the quiet zone, in modules. */
    static final int WITH_QUIET = MODULES + 2 * QUIET;

    /**
     * A run of dark modules in one row of the code.
     *
     * @param row from the top
     * @param from first dark module
     * @param to first module past the run
     */
    public record Run(int row, int from, int to) {}

    /** The dark modules, as runs, row by row. */
    public List<Run> runs() {
        ByteMatrix modules = matrix();
        List<Run> runs = new ArrayList<>();
        for (int row = 0; row < MODULES; row++) {
            int from = -1;
            for (int column = 0; column <= MODULES; column++) {
                boolean dark = column < MODULES && modules.get(column, row) == 1;
                if (dark && from < 0) {
                    from = column;
                } else if (!dark && from >= 0) {
                    runs.add(new Run(row, from, column));
                    from = -1;
                }
            }
        }
        return runs;
    }

    private ByteMatrix matrix() {
        try {
            return Encoder.encode(text, ErrorCorrectionLevel.Q, Map.of(EncodeHintType.QR_VERSION, 2))
                    .getMatrix();
        } catch (WriterException tooLong) {
            throw Refusal.failure("the test plate's code \"" + text + "\" can't be drawn: please report it", tooLong);
        }
    }
}
