package greyground.plate;

import java.util.function.IntBinaryOperator;

/** A film whose pixels a rule draws, counted from the plate's top left; also past the plate. */
public final class DrawnFilm implements PlateFilm {
    private final int width;
    private final int height;
    private final double pitch;
    private final IntBinaryOperator black;

    /** Blackens the pixels at which the rule gives more than 0. */
    public DrawnFilm(int width, int height, double pitch, IntBinaryOperator black) {
        this.width = width;
        this.height = height;
        this.pitch = pitch;
        this.black = black;
    }

    @Override
    public int width() {
        return width;
    }

    @Override
    public int height() {
        return height;
    }

    @Override
    public double pitchMicrometres() {
        return pitch;
    }

    @Override
    public Rows open() {
        return new Rows() {
            @Override
            public Strip strip(int firstRow, int rowCount) {
                return (left, across) -> {
                    int bytesPerRow = (across + 7) / 8;
                    byte[] packed = new byte[bytesPerRow * rowCount];
                    for (int y = 0; y < rowCount; y++) {
                        for (int x = 0; x < across; x++) {
                            if (black.applyAsInt(left + x, firstRow + y) > 0) {
                                packed[y * bytesPerRow + (x >> 3)] |= (byte) (0x80 >> (x & 7));
                            }
                        }
                    }
                    return FilmPatch.cutting(across, rowCount, pitch, left * pitch, firstRow * pitch, packed);
                };
            }

            @Override
            public void close() {}
        };
    }
}
