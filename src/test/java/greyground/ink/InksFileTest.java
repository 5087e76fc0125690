package greyground.ink;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.colour.Acceptance;
import greyground.colour.Lab;
import greyground.colour.SmoothSpectrum;
import greyground.ink.PrintingInk.Opacity;
import greyground.quantity.Refusal;
import greyground.workshop.Workshop;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class InksFileTest {
    private static final Workshop SHOP = Workshop.assumed();

    private static InkSet inks(String list) {
        return InksFile.read("{\"greyground\": \"inks\", \"version\": 1, " + list + "}");
    }

    @Test
    void readsWhatAPrintmakerKnowsAndWritesItBack() {
        InkSet set = inks("\"paper\": {\"lab\": [95, 0, 4]}, \"inks\": ["
                + "{\"name\": \"yellow\", \"screen\": \"#EFCF3A\"},"
                + "{\"name\": \"blue\", \"lab\": [43, -5, -38], \"filmMicrometres\": 8, \"strength\": 0.5, \"opacity\": \"half\"},"
                + "{\"name\": \"black\"}],"
                + "\"acceptance\": 0.85, \"pairs\": [{\"inks\": [\"blue\", \"black\"], \"acceptance\": 0.7}],"
                + "\"overprints\": [{\"inks\": [\"yellow\", \"blue\"], \"lab\": [40, -30, 10]}]");
        assertEquals(
                new PrintingInk("blue", Optional.of(new Lab(43, -5, -38)), 8, 0.5, Opacity.HALF),
                set.inks().get(1));
        assertTrue(set.inks().get(2).isWorkshopsOwn());
        assertEquals(List.of(new InkSet.Overprint(3, new Lab(40, -30, 10))), set.overprints());
        assertEquals(new Acceptance(0.85, Map.of(0b110, 0.7)), set.acceptance());
        assertEquals(set, InksFile.read(InksFile.text(set)));
    }

    @Test
    void saysWhatColoursOverOneAnotherRestOn() {
        String three = "\"inks\": [{\"name\": \"a\"}, {\"name\": \"b\"}, {\"name\": \"c\"}]";
        assertEquals(
                "Foretold from single inks, overprints not measured; wet ink is assumed to take on all ink.",
                inks(three).known(3));
        assertEquals(
                "Foretold from single inks, overprints not measured.",
                inks(three).known(1));
        InkSet told =
                inks(three + ", \"acceptance\": 0.8, \"pairs\": [{\"inks\": [\"b\", \"c\"], \"acceptance\": 0.9}],"
                        + "\"overprints\": [{\"inks\": [\"a\", \"c\"], \"lab\": [40, 0, 0]}]");
        assertEquals(
                "Foretold with 1 of 4 overprints measured; wet ink takes on 80 to 90 % of an ink over it, as the inks"
                        + " file tells.",
                told.known(3));
        assertEquals(
                "Foretold from single inks, overprints not measured; wet ink takes on 80 to 90 % of an ink over it, as"
                        + " the inks file tells.",
                told.known(2));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "\"inks\": []|number of inks is 0",
                "\"ink\": []|holds no list \"inks\"",
                "\"inks\": [{\"name\": \"\"}]|named \"\"",
                "\"inks\": [{}]|inks inks.0.name is missing",
                "\"inks\": [{\"name\": \"a\"}, {\"name\": \"A \"}]|two inks are named",
                "\"inks\": [{\"name\": \"a\", \"strength\": 9}]|inks inks.0.strength is 9; it must be a number from 0.05 to 4",
                "\"inks\": [{\"name\": \"a\", \"lab\": [1, 2]}]|inks inks.0.lab is [1,2]; it must be three numbers",
                "\"inks\": [{\"name\": \"a\", \"lab\": [101, 2, 3]}]|ink a has L* 101",
                "\"inks\": [{\"name\": \"a\", \"screen\": \"yellow\"}]|screen colour \"yellow\"",
                "\"inks\": [{\"name\": \"a\", \"screen\": \"#123456\", \"lab\": [1, 2, 3]}]|leave one of them out",
                "\"inks\": [{\"name\": \"a\", \"opacity\": \"thick\"}]|one of half, opaque, transparent",
                "\"inks\": [{\"name\": \"a\", \"strenght\": 0.5}]|did you mean inks.0.strength",
                "\"inks\": [{\"name\": \"a\"}, {\"name\": \"b\", \"opacity\": \"opaque\"}]|b is opaque and printed second",
                "\"inks\": [{\"name\": \"a\"}], \"overprints\": [{\"inks\": [\"a\", \"c\"]}]|c is none of its inks",
                "\"inks\": [{\"name\": \"a\"}], \"overprints\": [{\"inks\": [\"a\"]}]|must name two inks or more",
                "\"inks\": [{\"name\": \"a\"}], \"acceptance\": 0|inks acceptance is 0; it must be a number from 0.2 to 1",
                "\"inks\": [{\"name\": \"a\"}], \"acceptence\": 1|did you mean acceptance",
                "\"inks\": [{\"name\": \"a\"}, {\"name\": \"b\"}], \"pairs\": [{\"inks\": [\"a\", \"b\"]}]|inks pairs.0.acceptance is missing",
                "\"inks\": [{\"name\": \"a\"}, {\"name\": \"b\"}], \"pairs\": [{\"inks\": [\"a\", \"d\"], \"acceptance\": 1}]|a pair of [a, d], and d is none of its inks"
            })
    void refusesInOneLineAndNamesThePlace(String list, String said) {
        String words =
                String.valueOf(assertThrows(Refusal.class, () -> inks(list)).getMessage());
        assertTrue(words.contains(said), words);
        assertEquals(1, words.lines().count());
    }

    /** A grey ink by its colour is the engine's ink: what it prints comes back to rounding. */
    @Test
    void aGreyInkByItsPatchIsTheWorkshopsOwn() {
        InkSet own = inks("\"inks\": [{\"name\": \"black\"}]");
        assertSame(SHOP, own.shop(0, SHOP));
        Lab full = Lab.of(SmoothSpectrum.colour(own.inBands(0, SHOP).onPaper(own.paperInBands(SHOP), 5)));
        InkSet measured = inks("\"inks\": [{\"name\": \"black\", \"filmMicrometres\": 5, \"lab\": [" + full.lightness()
                + ", " + full.a() + ", " + full.b() + "]}]");
        double strength = SHOP.ink().strengthPerMicrometre().value();
        for (int band = 0; band < SmoothSpectrum.BANDS; band++) {
            assertEquals(strength, measured.inBands(0, SHOP).strengthPerMicrometre(band), 1e-6);
        }
        assertEquals(
                strength, measured.shop(0, SHOP).ink().strengthPerMicrometre().value(), 1e-6);
    }

    @Test
    void inksThatLookAlikeAreRefused() {
        InkSet alike = inks("\"inks\": [{\"name\": \"a\"}, {\"name\": \"b\", \"strength\": 0.99}]");
        String words = String.valueOf(
                assertThrows(Refusal.class, () -> alike.checkApart(SHOP)).getMessage());
        assertTrue(words.contains("inks a and b can't be told apart"), words);
        inks("\"inks\": [{\"name\": \"a\"}, {\"name\": \"b\", \"strength\": 0.3}]")
                .checkApart(SHOP);
    }

    @Test
    void anInkThatNoPaperCarriesIsRefused() {
        InkSet white = inks("\"inks\": [{\"name\": \"white\", \"lab\": [99, 0, 0]}]");
        String words = String.valueOf(
                assertThrows(Refusal.class, () -> white.shop(0, SHOP)).getMessage());
        assertTrue(words.contains("ink white has a colour that no ink has on this paper"), words);
        InkSet faint = inks("\"inks\": [{\"name\": \"faint\", \"lab\": [94, 0, 1]}]");
        assertTrue(String.valueOf(
                        assertThrows(Refusal.class, () -> faint.shop(0, SHOP)).getMessage())
                .contains("ink faint has a strength of"));
    }
}
