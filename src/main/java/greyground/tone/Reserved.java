package greyground.tone;

/**
 * A plate of which a curve uses less black than it could: no more than a limit short of its turning point.
 *
 * @param plate whose lightness it has
 * @param most coverage at the limit, above the plate's least
 */
public record Reserved(PlateResponse plate, double most) implements PlateResponse {
    @Override
    public double lightness(double coverage) {
        return plate.lightness(coverage);
    }

    @Override
    public UsableCoverage usable() {
        UsableCoverage whole = plate.usable();
        return new UsableCoverage(whole.least(), Math.min(most, whole.most()));
    }

    @Override
    public String name() {
        return plate.name();
    }
}
