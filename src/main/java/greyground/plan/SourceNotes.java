package greyground.plan;

import java.util.ArrayList;
import java.util.List;

/** Where a plan's numbers come from: each source once, numbered from 1 in the order in which it is first asked for. */
public final class SourceNotes {
    private final List<String> sources = new ArrayList<>();

    /** What stands behind a number, such as " [3]"; nothing where it has no source. */
    public String mark(String source) {
        if (source.isEmpty()) {
            return "";
        }
        if (!sources.contains(source)) {
            sources.add(source);
        }
        return " [" + (sources.indexOf(source) + 1) + "]";
    }

    /** The sources so far, in order. */
    public List<String> all() {
        return List.copyOf(sources);
    }
}
