package greyground.desk.setting;

import greyground.desk.model.Station;
import greyground.desk.model.Unit;
import greyground.desk.setting.Setting.JobNumber;
import greyground.desk.setting.Setting.ShopNumber;
import java.util.List;

/** What is settled of wiping, ink and paper. */
final class PrintSettings {
    static final List<Setting> ALL = List.of(
            new ShopNumber(
                    "pad",
                    Station.PRINT,
                    "Wiping pad",
                    Unit.MILLIMETRES,
                    0.01,
                    100,
                    0.1,
                    "wipe.padRadiusMillimetres",
                    words -> true,
                    "How round the pad is that wipes the plate: a small radius reaches deep into wide wells and wipes them pale."),
            new ShopNumber(
                    "plate-tone",
                    Station.PRINT,
                    "Plate tone",
                    Unit.MICROMETRES,
                    0,
                    5,
                    0.05,
                    "wipe.plateToneMicrometres",
                    words -> true,
                    "Ink that wiping leaves all over; 0 to 0.3 is a clean wipe."),
            new ShopNumber(
                    "ink-density",
                    Station.PRINT,
                    "Ink's deepest",
                    Unit.DENSITY,
                    0.5,
                    3,
                    0.05,
                    "ink.saturationDensity",
                    words -> true,
                    "Density over paper of a very thick film of your ink. Measure the deepest tone, less the paper."),
            new ShopNumber(
                    "ink-strength",
                    Station.PRINT,
                    "Ink's strength",
                    Unit.PER_MICROMETRE,
                    0.01,
                    2,
                    0.01,
                    "ink.strengthPerMicrometre",
                    words -> true,
                    "How fast density grows with the ink's thickness."),
            new ShopNumber(
                    "transfer",
                    Station.PRINT,
                    "Ink given up",
                    Unit.RATIO,
                    0.05,
                    1,
                    0.05,
                    "ink.transferFraction",
                    words -> true,
                    "Share of a well's ink that goes onto the paper; damp, soft paper takes more."),
            new ShopNumber(
                    "paper-density",
                    Station.PRINT,
                    "Paper",
                    Unit.DENSITY,
                    0,
                    0.6,
                    0.01,
                    "paper.whiteDensity",
                    words -> true,
                    "Density of the bare sheet; 0.06 is a white cotton paper."),
            new JobNumber(
                    "shrink-across",
                    Station.PRINT,
                    "Shrinks across",
                    Unit.PERCENT,
                    -5,
                    10,
                    0.1,
                    "paper-shrink",
                    0,
                    "0%,0%",
                    "The paper, from damp to dry. The film's picture is made larger by as much, so that a circle dries round. Measure a platemark damp and dry."),
            new JobNumber(
                    "shrink-down",
                    Station.PRINT,
                    "Shrinks down",
                    Unit.PERCENT,
                    -5,
                    10,
                    0.1,
                    "paper-shrink",
                    1,
                    "0%,0%",
                    "The same along the other edge; paper shrinks more across its grain."));

    private PrintSettings() {}
}
