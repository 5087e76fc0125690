package greyground.film.sheet;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeSet;

/**
 * Where tiles begin along one side of a sheet: as few as will do, as equal as may be, and with each cut, the middle of an overlap, clear of
 * what should stay whole. What is longer than any tile, or leaves no room for a cut, is cut all the same, the longest first.
 *
 * @param length of the sheet, in pixels
 * @param window the most that a tile shows
 * @param overlap of neighbours; all begin at a multiple of 8
 */
record Seams(int length, int window, int overlap) {
    /** A stretch that should stay whole. */
    record Whole(int from, int to) {
        boolean cutAt(int place) {
            return place > from && place < to;
        }
    }

    /** Starts of the tiles, the first 0. */
    List<Integer> starts(List<Whole> undivided) {
        if (length <= window) {
            return List.of(0);
        }
        int least = 1 + (length - window + window - overlap - 1) / (window - overlap);
        List<Whole> whole = new ArrayList<>(undivided);
        whole.sort(Comparator.comparingInt(stretch -> stretch.to - stretch.from));
        while (true) {
            for (int tiles = least; tiles <= least + 1; tiles++) {
                List<Integer> starts = balanced(tiles, whole);
                if (!starts.isEmpty()) {
                    return starts;
                }
            }
            whole.remove(whole.size() - 1);
        }
    }

    /** The starts nearest to equal steps that cut nothing; empty if there are none. */
    private List<Integer> balanced(int tiles, List<Whole> whole) {
        TreeSet<Integer> places = new TreeSet<>();
        for (int i = 1; i < tiles; i++) {
            add(places, equal(i, tiles), whole);
            add(places, i * (window - overlap), whole);
            add(places, length - overlap - (tiles - i) * (window - overlap) + 7, whole);
        }
        for (Whole stretch : whole) {
            add(places, stretch.from - overlap / 2 - 7, whole);
            add(places, stretch.to - overlap / 2 + 7, whole);
        }
        List<Path> paths = List.of(new Path(List.of(0), 0));
        for (int i = 1; i < tiles; i++) {
            paths = further(paths, places, equal(i, tiles), tiles - i);
        }
        return paths.stream()
                .min(Comparator.comparingLong(Path::strays))
                .map(Path::starts)
                .orElse(List.of());
    }

    private record Path(List<Integer> starts, long strays) {
        int last() {
            return starts.get(starts.size() - 1);
        }
    }

    /** To each place the best way that leads there, if those that are left can still reach the end. */
    private List<Path> further(List<Path> paths, TreeSet<Integer> places, int equal, int left) {
        List<Path> longer = new ArrayList<>();
        for (int place : places) {
            boolean reaches = place + overlap + (long) left * (window - overlap) >= length;
            paths.stream()
                    .filter(path -> reaches
                            && place - path.last() >= overlap
                            && place - path.last() <= window - overlap
                            && length - place > overlap)
                    .min(Comparator.comparingLong(Path::strays))
                    .ifPresent(path -> {
                        List<Integer> starts = new ArrayList<>(path.starts);
                        starts.add(place);
                        long stray = (long) place - equal;
                        longer.add(new Path(starts, path.strays + stray * stray));
                    });
        }
        return longer;
    }

    private int equal(int i, int tiles) {
        return (int) ((long) i * (length - overlap) / tiles);
    }

    private void add(TreeSet<Integer> places, int start, List<Whole> whole) {
        int place = start / 8 * 8;
        if (place > 0 && whole.stream().noneMatch(stretch -> stretch.cutAt(place + overlap / 2))) {
            places.add(place);
        }
    }
}
