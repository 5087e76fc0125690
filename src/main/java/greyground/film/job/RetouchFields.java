package greyground.film.job;

import com.fasterxml.jackson.databind.node.ObjectNode;
import greyground.art.burnish.LocalTouch;
import greyground.art.spots.Spot;
import greyground.json.JsonFields;
import greyground.quantity.Offset;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** What the hand does to single places of the art: settings of {@link JobFields}. */
public final class RetouchFields {
    public static final JobField<List<LocalTouch>> TOUCHES = JobField.part(
                    "touches",
                    new Touches(),
                    job -> job.art().hand().retouching().touches(),
                    "art.hand.retouching.touches")
            .typed(JobField.FILE)
            .at("art", "touches")
            .shown(
                    "Burnish, deepen",
                    "A file of soft strokes, ellipses and gradients that lighten or darken places of the plate, or 'none'. docs/touches.md says how it is written. They go with the job, and their order is no matter.");

    public static final JobField<SpotWish> SPOTS = JobField.part(
                    "spots",
                    new Spotting(),
                    job -> job.art().hand().retouching().spots(),
                    "art.hand.retouching.spots")
            .typed(JobField.FILE)
            .at("art", "spots")
            .shown(
                    "Dust and scratches",
                    "Dust, hairs and scratches to heal from what lies around them: 'none', 'found' for those that stand out of the art, or a file of those you chose. docs/spots.md says how it is written and where proposals come from. They go with the job.");

    /** In the order of the job's file. */
    static final List<JobField<?>> LISTED = List.of(SPOTS, TOUCHES);

    private RetouchFields() {}

    /**
     * One stroke more, softened over half of its width.
     *
     * @param lightness in L*: above 0 burnished, below 0 deepened
     * @param widthMillimetres of the brush, 0.1 to 3000
     * @param points one or more, from the plate's top left as the print reads
     */
    public static Job withStroke(Job job, double lightness, double widthMillimetres, List<Offset> points) {
        LocalTouch.WIDTH.check("brush", widthMillimetres);
        List<LocalTouch> touches = new ArrayList<>(TOUCHES.of(job));
        touches.add(new LocalTouch.Stroke(
                lightness, widthMillimetres, Math.max(LocalTouch.FEATHER.least(), widthMillimetres / 2), points));
        return TOUCHES.with(job, List.copyOf(touches));
    }

    /** Touches as their file has them. */
    record Touches() implements Kind<List<LocalTouch>> {
        private static final String NONE = "none";

        @Override
        public List<LocalTouch> parse(String what, String text, Kind.Art art) {
            return text.strip().equals(NONE) ? List.of() : TouchesFile.read(text);
        }

        @Override
        public String print(List<LocalTouch> value) {
            return value.isEmpty() ? NONE : TouchesFile.tree(value).toString();
        }

        @Override
        public String brief(List<LocalTouch> value) {
            return value.isEmpty() ? NONE : value.size() == 1 ? "1 touch" : value.size() + " touches";
        }

        @Override
        public List<String> words() {
            return List.of(NONE);
        }

        @Override
        public void write(ObjectNode node, String name, List<LocalTouch> value) {
            TouchesFile.write(node.putArray(name), value);
        }

        @Override
        public List<LocalTouch> read(JsonFields fields, String name, @Nullable List<LocalTouch> usual) {
            return TouchesFile.read(fields, name);
        }
    }

    /** Spots as their file has them. */
    record Spotting() implements Kind<SpotWish> {
        private static final String NONE = "none";
        private static final String FOUND = "found";

        @Override
        public SpotWish parse(String what, String text, Kind.Art art) {
            return switch (text.strip()) {
                case NONE -> SpotWish.NONE;
                case FOUND -> SpotWish.FOUND;
                default -> new SpotWish.Chosen(SpotsFile.read(text));
            };
        }

        @Override
        public String print(SpotWish value) {
            return value instanceof SpotWish.Chosen chosen
                    ? SpotsFile.tree(chosen.spots()).toString()
                    : value instanceof SpotWish.Found ? FOUND : NONE;
        }

        @Override
        public String brief(SpotWish value) {
            if (!(value instanceof SpotWish.Chosen chosen)) {
                return print(value);
            }
            long accepted = chosen.spots().stream().filter(Spot::accepted).count();
            return accepted + " of " + chosen.spots().size();
        }

        @Override
        public List<String> words() {
            return List.of(NONE, FOUND);
        }

        /** Left out where nothing is healed, as jobs of older versions have it. */
        @Override
        public void write(ObjectNode node, String name, SpotWish value) {
            if (value instanceof SpotWish.Chosen chosen) {
                SpotsFile.write(node.putArray(name), chosen.spots());
            } else if (value instanceof SpotWish.Found) {
                node.put(name, FOUND);
            }
        }

        @Override
        public SpotWish read(JsonFields fields, String name, @Nullable SpotWish usual) {
            if (fields.isWord(name, NONE)) {
                return SpotWish.NONE;
            }
            return fields.isText(name)
                    ? spoken(fields.choice(name, NONE, Set.of(NONE, FOUND)))
                    : new SpotWish.Chosen(SpotsFile.read(fields, name));
        }

        private static SpotWish spoken(String word) {
            return word.equals(FOUND) ? SpotWish.FOUND : SpotWish.NONE;
        }
    }
}
