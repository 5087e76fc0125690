package greyground.grain;

/**
 * The discrete Fourier transform of 2^k samples, in place: bit reversal, then butterflies of doubling span (Cooley and Tukey
 * 1965). {@code X_k = sum of x_n exp(-2 pi i k n / N)}, not scaled.
 */
final class FourierTransform {
    private final int size;
    private final double[] cosines;
    private final double[] sines;

    /**
     * Prepares a size.
     *
     * @param size a power of two, 2 to 65 536
     */
    FourierTransform(int size) {
        if (size < 2 || size > 65_536 || Integer.bitCount(size) != 1) {
            throw new IllegalArgumentException("size is " + size + "; it must be a power of two from 2 to 65536");
        }
        this.size = size;
        this.cosines = new double[size / 2];
        this.sines = new double[size / 2];
        for (int i = 0; i < size / 2; i++) {
            cosines[i] = StrictMath.cos(2 * Math.PI * i / size);
            sines[i] = -StrictMath.sin(2 * Math.PI * i / size);
        }
    }

    /** Transforms {@code size} samples that lie {@code stride} apart from {@code from} on. */
    void transform(double[] real, double[] imaginary, int from, int stride) {
        for (int i = 1, j = 0; i < size; i++) {
            int bit = size >> 1;
            for (; (j & bit) != 0; bit >>= 1) {
                j ^= bit;
            }
            j ^= bit;
            if (i < j) {
                swap(real, from + i * stride, from + j * stride);
                swap(imaginary, from + i * stride, from + j * stride);
            }
        }
        for (int span = 1; span < size; span <<= 1) {
            int turn = size / (2 * span);
            for (int start = 0; start < size; start += 2 * span) {
                for (int k = 0; k < span; k++) {
                    int upper = from + (start + k) * stride;
                    int lower = upper + span * stride;
                    double cosine = cosines[k * turn];
                    double sine = sines[k * turn];
                    double turnedReal = real[lower] * cosine - imaginary[lower] * sine;
                    double turnedImaginary = real[lower] * sine + imaginary[lower] * cosine;
                    real[lower] = real[upper] - turnedReal;
                    imaginary[lower] = imaginary[upper] - turnedImaginary;
                    real[upper] += turnedReal;
                    imaginary[upper] += turnedImaginary;
                }
            }
        }
    }

    private static void swap(double[] values, int i, int j) {
        double kept = values[i];
        values[i] = values[j];
        values[j] = kept;
    }
}
