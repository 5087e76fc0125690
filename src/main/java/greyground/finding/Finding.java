package greyground.finding;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;

/**
 * One thing that an outcome says.
 *
 * @param key of its JSON field, such as "turningPoint"
 * @param words one sentence a line, small at its beginning and without a full stop; none where the figures alone speak
 * @param figures for other programs and for columns
 */
public record Finding(String key, List<String> words, JsonNode figures) {
    public Finding {
        words = List.copyOf(words);
    }
}
