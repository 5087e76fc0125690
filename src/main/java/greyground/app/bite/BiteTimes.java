package greyground.app.bite;

import greyground.quantity.Durations;
import greyground.quantity.Refusal;
import java.util.ArrayList;
import java.util.List;

/**
 * A series of bites, as a person writes it: {@code "5,10,20,40min"} or {@code "90s, 5min, 20min"}. A unit that is left out is
 * the last one's.
 *
 * @param minutes in the order given, each 0.1 to 1000
 */
public record BiteTimes(List<Double> minutes) {
    private static final int MOST = 8;

    public BiteTimes {
        minutes = List.copyOf(minutes);
        if (minutes.isEmpty() || minutes.size() > MOST) {
            throw Refusal.use("bite series has " + minutes.size() + " times; a sheet holds 1 to " + MOST
                    + ": write them like 5,10,20,40min");
        }
        for (double time : minutes) {
            Refusal.checkRange("bite", time, 0.1, 1000, "min", "10 to 40 min is usual");
        }
    }

    public static BiteTimes parse(String text) {
        String[] parts = text.strip().split("\\s*[,;]\\s*", -1);
        String last = parts[parts.length - 1];
        String unit = last.replaceFirst("^[0-9.:]*\\s*", "");
        List<Double> minutes = new ArrayList<>();
        for (String part : parts) {
            String whole = part.matches("[0-9.]+") ? part + unit : part;
            minutes.add(Durations.parseSeconds("bite", whole) / 60);
        }
        return new BiteTimes(minutes);
    }
}
