package greyground.plate;

class Study {
    static void row(String n, VirtualPlate p, FilmPatches g, double... as) {
        System.out.println(n);
        for (double a : as) {
            long t = System.nanoTime();
            ToneTerms e = p.terms(a, g.at(a));
            System.out.printf(
                    "  %.3f light %.3f open %.3f land %.3f depth %.1f ink %.2f held %.3f printed %.3f film %.2f solid %.3f D %.3f L %.2f +-%.2f  %d ms%n",
                    a,
                    e.openedByLight(),
                    e.openShare(),
                    e.landLeft(),
                    e.meanDepthMicrometres(),
                    e.inkVolumeMicrometres(),
                    e.inkHeldShare(),
                    e.printedShare(),
                    e.inkFilmMicrometres(),
                    e.solidDensity(),
                    e.density(),
                    e.lightness(),
                    e.lightnessError(),
                    (System.nanoTime() - t) / 1000000);
        }
    }

    static void resp(String n, VirtualPlate p, FilmPatches g) {
        long t = System.nanoTime();
        VirtualResponse r = VirtualResponse.of(p, g);
        long ms = (System.nanoTime() - t) / 1000000;
        System.out.println(
                n + " " + ms + " ms usable " + r.usable() + " " + r.printableRange() + " smoothed " + r.smoothedBy());
        StringBuilder b = new StringBuilder();
        for (ToneTerms e : r.levels()) b.append(String.format("%.4f:%.1f ", e.coverage(), e.lightness()));
        System.out.println(b);
    }

    public static void main(String[] a) {
        NoiseGrain g = new NoiseGrain(2880, 180, 2.0, 7);
        double[] as = {.1, .3, .7, .85};
        for (double px : new double[] {1.0, 1.5, 3, 4.5})
            row("px " + px, new VirtualPlate(Studio.etched(40, 2), null, px), g, as);
        g = new NoiseGrain(1440, 180, 2.0, 7);
        for (double px : new double[] {1.5, 3, 4.5, 6, 9})
            row("1440 h15 px " + px, new VirtualPlate(Studio.etched(15, 2), null, px), g, as);
    }
}
