package greyground.film.job;

import java.util.Map;
import java.util.function.UnaryOperator;

/** Changes of a job in words, as options give them. */
public final class Told {
    private Told() {}

    public static UnaryOperator<Job> as(Map<String, String> words) {
        return job -> JobFields.told(job, words, Kind.Art.UNKNOWN);
    }

    public static UnaryOperator<Job> as(String name, String word) {
        return as(Map.of(name, word));
    }
}
