package greyground.grain;

/**
 * Finds the least crowded of many sites while their crowding only ever rises, so an old figure is a lower bound and is
 * put right only when it comes to the top. Owned by one thread.
 */
final class LeastCrowded {
    private final float[] crowd;
    private final float[] keys;
    private final int[] sites;
    private int size;

    /** @param crowd how crowded each site is; read, never written */
    LeastCrowded(float[] crowd) {
        this.crowd = crowd;
        this.keys = new float[crowd.length];
        this.sites = new int[crowd.length];
    }

    boolean isEmpty() {
        return size == 0;
    }

    void add(int site) {
        int at = size++;
        float key = crowd[site];
        while (at > 0 && keys[(at - 1) / 2] > key) {
            keys[at] = keys[(at - 1) / 2];
            sites[at] = sites[(at - 1) / 2];
            at = (at - 1) / 2;
        }
        keys[at] = key;
        sites[at] = site;
    }

    /** The least crowded site; it stays. */
    int peek() {
        while (keys[0] < crowd[sites[0]]) {
            sink(crowd[sites[0]], sites[0]);
        }
        return sites[0];
    }

    /** Removes the least crowded site. */
    int take() {
        int site = peek();
        drop(site);
        return site;
    }

    /** Removes a site that {@link #peek} has just given, however crowded it is by now. */
    void drop(int site) {
        if (sites[0] != site) {
            throw new IllegalStateException("site " + site + " is not the least crowded");
        }
        size--;
        if (size > 0) {
            sink(keys[size], sites[size]);
        }
    }

    /** Sorts anew after the crowding of many sites has fallen. */
    void renew() {
        int held = size;
        size = 0;
        for (int i = 0; i < held; i++) {
            add(sites[i]);
        }
    }

    private void sink(float key, int site) {
        int at = 0;
        while (true) {
            int child = 2 * at + 1;
            if (child >= size) {
                break;
            }
            if (child + 1 < size && keys[child + 1] < keys[child]) {
                child++;
            }
            if (keys[child] >= key) {
                break;
            }
            keys[at] = keys[child];
            sites[at] = sites[child];
            at = child;
        }
        keys[at] = key;
        sites[at] = site;
    }
}
