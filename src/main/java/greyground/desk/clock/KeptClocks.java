package greyground.desk.clock;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import greyground.desk.model.DeskFolder;
import greyground.json.JsonText;
import greyground.quantity.Refusal;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Clocks that have begun, on disk, so that they outlive a closed window, a kill and a power cut: one file for each running desk, written
 * whenever a clock is started, stopped or set back. At the next start they have run for as long as they would have run; if the system's clock was
 * set back meanwhile, no time has passed for them.
 */
public final class KeptClocks {
    private static final String KIND = "desk clocks";
    private static final String WHAT = "clocks";
    private static final double MILLIS = 1000;

    private final DeskFolder folder;
    private final String own;
    private final InstantSource time;
    private List<BenchClocks.Begun> kept = List.of();

    /**
     * Keeps clocks of a desk.
     *
     * @param process number of its process
     * @param time of day, which goes on between runs
     */
    public KeptClocks(DeskFolder folder, long process, InstantSource time) {
        this.folder = folder;
        this.own = DeskFolder.named(WHAT, process);
        this.time = time;
    }

    /** Takes up the clocks of desks that no longer run; their files go once this one's holds them. Returns what was found. */
    public List<BenchClocks.Begun> takeUp(BenchClocks clocks) {
        // This process has only begun: a file of its own number is of one that had it before.
        List<String> names = new ArrayList<>(folder.ofGone(WHAT));
        names.add(own);
        List<BenchClocks.Begun> found =
                names.stream().flatMap(name -> read(name).stream()).toList();
        found.forEach(clocks::takeUp);
        if (keep(clocks)) {
            names.stream().filter(name -> !name.equals(own)).forEach(folder::forget);
        }
        return found;
    }

    /** Keeps the clocks that have begun, if any of them is not as it was; returns whether they are kept. */
    public boolean keep(BenchClocks clocks) {
        List<BenchClocks.Begun> now = clocks.asTheyStand();
        if (now.stream().map(KeptClocks::without).toList().equals(kept)) {
            return true;
        }
        boolean done = true;
        if (now.isEmpty()) {
            folder.forget(own);
        } else {
            done = folder.keep(WHAT, own, JsonText.print(tree(now)));
        }
        if (done) {
            kept = now.stream().map(KeptClocks::without).toList();
        }
        return done;
    }

    /** What only running changes doesn't count. */
    private static BenchClocks.Begun without(BenchClocks.Begun clock) {
        return new BenchClocks.Begun(
                clock.plate(),
                clock.step(),
                clock.next(),
                clock.cautions(),
                clock.seconds(),
                clock.running() ? 0 : clock.ran(),
                clock.running(),
                clock.rung());
    }

    private ObjectNode tree(List<BenchClocks.Begun> clocks) {
        ObjectNode tree = JsonText.object();
        tree.put("greyground", KIND);
        tree.put("version", 1);
        tree.put("asOfEpochMillis", time.millis());
        var list = tree.putArray("clocks");
        for (BenchClocks.Begun clock : clocks) {
            ObjectNode each = list.addObject();
            each.put("plate", clock.plate());
            each.put("step", clock.step());
            each.put("next", clock.next());
            var cautions = each.putArray("cautions");
            clock.cautions().forEach(cautions::add);
            each.put("seconds", clock.seconds());
            each.put("ranSeconds", clock.ran());
            each.put("running", clock.running());
            each.put("rung", clock.rung());
        }
        return tree;
    }

    private List<BenchClocks.Begun> read(String name) {
        List<BenchClocks.Begun> clocks = new ArrayList<>();
        try {
            Optional<String> text = folder.read(name);
            if (text.isPresent()) {
                JsonNode tree = JsonText.read(KIND, 1, text.get());
                double passed = Math.max(
                        0, (time.millis() - tree.path("asOfEpochMillis").asLong()) / MILLIS);
                for (JsonNode each : tree.path("clocks")) {
                    clocks.add(clock(each, passed));
                }
            }
        } catch (Refusal | IllegalArgumentException spoilt) {
            // What can't be read is as if no clock had run; it is no one's work.
            clocks.clear();
        }
        return clocks;
    }

    private static BenchClocks.Begun clock(JsonNode each, double passed) {
        List<String> cautions = new ArrayList<>();
        each.path("cautions").forEach(caution -> cautions.add(caution.asText()));
        boolean running = each.path("running").asBoolean();
        return new BenchClocks.Begun(
                each.path("plate").asText(),
                each.path("step").asText(),
                each.path("next").asText(),
                cautions,
                each.path("seconds").asDouble(),
                each.path("ranSeconds").asDouble() + (running ? passed : 0),
                running,
                each.path("rung").asBoolean());
    }
}
