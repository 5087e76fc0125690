package greyground.workshop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.fit.MeasuredLevel;
import greyground.grain.Grain;
import greyground.plate.PlateProcess;
import greyground.quantity.Refusal;
import greyground.quantity.Resolution;
import greyground.quantity.Ruling;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class KeptResponseTest {
    private static final PlateMaking MAKING = new PlateMaking(
            new PlateProcess.EtchedFilm(), new Grain.Stochastic(180, 1), new Resolution(1440), true, 20, 150);

    private static List<MeasuredLevel> levels() {
        List<MeasuredLevel> levels = new ArrayList<>();
        for (int i = 0; i <= 10; i++) {
            // Digits that no short decimal has, so that a lost one shows.
            levels.add(new MeasuredLevel(i / 10.0, 93 - 70 * Math.sqrt(i / 10.0), 6 - 1.0 / 3, Math.sqrt(0.3), 20 + i));
        }
        return levels;
    }

    private static KeptResponse response(PlateMaking making) {
        return new KeptResponse(
                LocalDate.of(2026, 11, 20), "PEGEO", "scan at 300 pixels per inch", making, levels(), List.of());
    }

    private static String file() {
        return WorkshopFile.text(Workshop.assumed().measuring(List.of(response(MAKING))));
    }

    @Test
    void fileGivesBackEveryDigitOfEveryKindOfPlate() {
        List<KeptResponse> all = List.of(
                response(MAKING),
                response(new PlateMaking(
                        new PlateProcess.SprayedAquatint(0.4, 60, 1),
                        new Grain.Halftone(new Ruling(60), 30, Grain.DotShape.LINE),
                        new Resolution(2880),
                        false,
                        12.5,
                        106.18)),
                response(new PlateMaking(
                        new PlateProcess.UnetchedFilm(),
                        new Grain.Stochastic(250, 1),
                        new Resolution(720),
                        true,
                        0,
                        90)));
        Workshop shop = Workshop.assumed().measuring(all);
        String text = WorkshopFile.text(shop);
        assertEquals(shop, WorkshopFile.read(text));
        assertEquals(text, WorkshopFile.text(WorkshopFile.read(text)));
        assertFalse(text.substring(text.indexOf("\"responses\"")).contains("seed"));
    }

    @Test
    void workshopThatReadNoTestPlateKeepsItsFile() {
        assertFalse(WorkshopFile.text(Workshop.assumed()).contains("responses"));
    }

    @Test
    void remarksOfOtherVersionsSurvive() {
        String text = file().replace("\"chart\": \"PEGEO\",", "\"chart\": \"PEGEO\", \"paper\": \"damp\",")
                .replace("\"spacingMicrometres\": 180", "\"spacingMicrometres\": 180, \"mill\": \"old\"")
                .replaceFirst("\"degrees\": 22", "\"degrees\": 22, \"eye\": [1, 2]");
        String again = WorkshopFile.text(WorkshopFile.read(text).with("bath.etchFactor", Figure.assumed(3, "guess")));
        assertTrue(again.contains("\"paper\": \"damp\""), again);
        assertTrue(again.contains("\"mill\": \"old\""));
        assertTrue(again.indexOf("\"eye\"") > again.indexOf("\"degrees\": 22")
                && again.indexOf("\"eye\"") < again.indexOf("\"degrees\": 23"));
        assertEquals(again, WorkshopFile.text(WorkshopFile.read(again)));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "\"date\": \"2026-11-20\"|\"date\": \"2026-11-31\"|responses.0.date",
                "\"biteMinutes\": 20|\"biteMinutes\": -1|responses.0.biteMinutes",
                "\"biteMinutes\": 20,||responses.0.biteMinutes",
                "\"inkSide\": \"down\"|\"inkSide\": \"left\"|responses.0.inkSide",
                "\"coverage\": 0.1|\"coverage\": 1.1|responses.0.levels.1.coverage",
                "\"coverage\": 0.1|\"coverage\": 0.9|coverages must rise",
                "\"coverage\": 0,|\"coverage\": 0.01,|coverages must rise from 0",
                "\"degrees\": 20|\"degrees\": 0|responses.0.levels.0.degrees",
                "\"chart\": \"PEGEO\"|\"chart\": \" \"|chart"
            })
    void faultInAResponseIsNamed(String whole, String faulty, String named) {
        String text = file();
        assertTrue(text.contains(whole), text);
        String damaged = text.replaceFirst(whole, faulty == null ? "" : faulty);
        Refusal refusal = assertThrows(Refusal.class, () -> WorkshopFile.read(damaged));
        assertTrue(refusal.getMessage().contains(named), refusal.getMessage());
        assertFalse(refusal.getMessage().contains("\n"));
    }

    @Test
    void platesMadeAlikeHaveNoDifferencesAndOthersNameThem() {
        PlateMaking longer =
                new PlateMaking(MAKING.process(), new Grain.Stochastic(180, 77), new Resolution(1440), true, 25, 150.5);
        assertEquals(List.of("a bite of 20 min, not 25"), MAKING.differencesFrom(longer));
        assertEquals(List.of(), MAKING.differencesFrom(MAKING));
        PlateMaking other = new PlateMaking(
                PlateProcess.SprayedAquatint.usual(),
                new Grain.Halftone(new Ruling(60), 45, Grain.DotShape.ROUND),
                new Resolution(720),
                false,
                20,
                106);
        assertEquals(
                List.of(
                        "etched-film, not sprayed-aquatint of 50 µm covering 50 %",
                        "grain 180 µm, not round dots 60 lines/cm at 45 degrees",
                        "1440 dpi, not 720 dpi",
                        "ink side down, not ink side up",
                        "an exposure of 150 s, not 106"),
                MAKING.differencesFrom(other));
    }

    @Test
    void responseIsTheOneItsLevelsMake() {
        KeptResponse kept = response(MAKING);
        assertEquals("measured on 2026-11-20, chart PEGEO", kept.response().name());
        assertEquals(levels(), kept.response().levels());
        assertEquals(1, kept.response().usable().most());
        assertEquals(93, kept.response().lightness(0), 1e-9);
        assertEquals(23, kept.response().lightness(1), 1e-9);
    }
}
