package greyground.desk.model;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A fragment as the hand shapes it: pulled by its corners and edges, moved by its middle, at the plate's proportion where that is kept.
 * Lengths are art pixels. Immutable; knows nothing of the window.
 *
 * @param area the fragment, within the art
 * @param artWidth pixels across
 * @param artHeight pixels down
 */
public record CropFrame(Viewport.Area area, double artWidth, double artHeight) {
    private static final double LEAST_SHARE = 0.01;

    /** What is held: -1, 0 and 1 are the left or upper edge, the middle, the right or lower edge. */
    public record Grip(int across, int down) {
        public static final Grip MIDDLE = new Grip(0, 0);
    }

    private CropFrame framed(double left, double top, double width, double height) {
        return new CropFrame(new Viewport.Area(left, top, width, height), artWidth, artHeight);
    }

    /** Where its eight grips lie, corner by corner and edge by edge. */
    public List<Grip> grips() {
        List<Grip> grips = new ArrayList<>();
        for (int down = -1; down <= 1; down++) {
            for (int across = -1; across <= 1; across++) {
                if (across != 0 || down != 0) {
                    grips.add(new Grip(across, down));
                }
            }
        }
        return grips;
    }

    public double x(Grip grip) {
        return area.left() + area.width() * (grip.across() + 1) / 2;
    }

    public double y(Grip grip) {
        return area.top() + area.height() * (grip.down() + 1) / 2;
    }

    /**
     * The grip under a point; the nearest where several are in reach.
     *
     * @param reach how far the hand may miss it
     */
    public Optional<Grip> at(double atX, double atY, double reach) {
        Grip nearest = null;
        double least = reach;
        for (Grip grip : grips()) {
            double far = Math.max(Math.abs(x(grip) - atX), Math.abs(y(grip) - atY));
            if (far <= least) {
                least = far;
                nearest = grip;
            }
        }
        return Optional.ofNullable(nearest);
    }

    /** Whether a point lies in it. */
    public boolean holds(double atX, double atY) {
        return area.holds(atX, atY);
    }

    /** Whether it is less than all of the art. */
    public boolean cuts() {
        return area.width() < artWidth * 0.9999 || area.height() < artHeight * 0.9999;
    }

    /**
     * Pulled by a grip; stays within the art and keeps a hundredth of it.
     *
     * @param proportion width over height to be kept, 0 for none
     */
    public CropFrame pulled(Grip grip, double byX, double byY, double proportion) {
        if (grip.equals(Grip.MIDDLE)) {
            return framed(
                    Viewport.held(area.left() + byX, 0, artWidth - area.width()),
                    Viewport.held(area.top() + byY, 0, artHeight - area.height()),
                    area.width(),
                    area.height());
        }
        double left = area.left();
        double top = area.top();
        double right = left + area.width();
        double bottom = top + area.height();
        double leastWidth = artWidth * LEAST_SHARE;
        double leastHeight = artHeight * LEAST_SHARE;
        if (grip.across() < 0) {
            left = Viewport.held(left + byX, 0, right - leastWidth);
        } else if (grip.across() > 0) {
            right = Viewport.held(right + byX, left + leastWidth, artWidth);
        }
        if (grip.down() < 0) {
            top = Viewport.held(top + byY, 0, bottom - leastHeight);
        } else if (grip.down() > 0) {
            bottom = Viewport.held(bottom + byY, top + leastHeight, artHeight);
        }
        CropFrame pulled = framed(left, top, right - left, bottom - top);
        return proportion > 0 ? pulled.at(proportion, grip) : pulled;
    }

    /** The same at a proportion: the held side gives way, the side across from it stays. */
    private CropFrame at(double proportion, Grip grip) {
        double width = area.width();
        double height = area.height();
        if (grip.down() == 0 || (grip.across() != 0 && width / height < proportion)) {
            height = width / proportion;
        } else {
            width = height * proportion;
        }
        double anchorX = area.left() + area.width() * (1 - grip.across()) / 2;
        double anchorY = area.top() + area.height() * (1 - grip.down()) / 2;
        double roomX = room(anchorX, grip.across(), artWidth);
        double roomY = room(anchorY, grip.down(), artHeight);
        double shrink = Math.min(1, Math.min(roomX / width, roomY / height));
        double newWidth = width * shrink;
        double newHeight = height * shrink;
        return framed(
                anchorX - newWidth * (1 - grip.across()) / 2,
                anchorY - newHeight * (1 - grip.down()) / 2,
                newWidth,
                newHeight);
    }

    /** How long a side may be that grows from an anchor, towards one end or both. */
    private static double room(double anchor, int towards, double whole) {
        return towards > 0 ? whole - anchor : towards < 0 ? anchor : 2 * Math.min(anchor, whole - anchor);
    }

    /** The largest part of it with a proportion, about its own middle. */
    public CropFrame cutTo(double proportion) {
        double width = Math.min(area.width(), area.height() * proportion);
        double height = width / proportion;
        double left = area.left() + (area.width() - width) / 2;
        double top = area.top() + (area.height() - height) / 2;
        return framed(left, top, width, height);
    }
}
