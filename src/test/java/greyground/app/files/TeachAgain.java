package greyground.app.files;

import greyground.quantity.Refusal;
import greyground.workshop.Figure;
import greyground.workshop.Workshop;
import java.nio.file.Path;

/**
 * Teaches one workshop file lesson after lesson, as another program would: arguments SHOP.json FIRST LESSONS. Prints each etch factor that was
 * taken; a lesson refused because somebody else was quicker is tried again on what that one left.
 */
public final class TeachAgain {
    private TeachAgain() {}

    public static void main(String[] arguments) throws Exception {
        Path shop = Path.of(arguments[0]);
        int first = Integer.parseInt(arguments[1]);
        int lessons = Integer.parseInt(arguments[2]);
        for (int lesson = 0; lesson < lessons; lesson++) {
            double factor = 1 + (first + lesson) / 1000.0;
            while (!taught(shop, factor)) {
                Thread.onSpinWait();
            }
            System.out.println(factor);
        }
    }

    private static boolean taught(Path shop, double factor) throws Exception {
        ShopFile file = ShopFile.open(shop);
        Workshop before = file.workshop().orElseGet(Workshop::assumed);
        try {
            file.teach(before, before.with("bath.etchFactor", Figure.assumed(factor, "test")), "2026-11-26-AGAIN");
            return true;
        } catch (Refusal refusal) {
            if (String.valueOf(refusal.getMessage()).contains("changed by someone else")) {
                return false;
            }
            throw refusal;
        }
    }
}
