package greyground.quantity;

/**
 * A place or a shift on a flat thing, from its top left corner.
 *
 * @param acrossMillimetres to the right, -10 000 to 10 000
 * @param downMillimetres downwards, -10 000 to 10 000
 */
public record Offset(double acrossMillimetres, double downMillimetres) {
    public Offset {
        Refusal.checkRange("offset across", acrossMillimetres, -10_000, 10_000, "mm", "give the real distance");
        Refusal.checkRange("offset down", downMillimetres, -10_000, 10_000, "mm", "give the real distance");
    }

    /**
     * Reads {@code "60mm,80mm"}, {@code "0,5in, 1in"} or {@code "-3mm; 2mm"}: across, then down, each with its unit.
     *
     * @param what the trade's name of the place, used when refusing
     */
    public static Offset parse(String what, String text) {
        String[] pair = Measure.pair(text);
        if (pair.length != 2) {
            throw Refusal.use(what + " " + Measure.quoted(text)
                    + " is not a pair: write across and down, each with its unit, such as 60mm,80mm");
        }
        return new Offset(
                Lengths.parseSignedMillimetres(what + " across", pair[0]),
                Lengths.parseSignedMillimetres(what + " down", pair[1]));
    }

    @Override
    public String toString() {
        return Refusal.plain(acrossMillimetres) + " mm, " + Refusal.plain(downMillimetres) + " mm";
    }
}
