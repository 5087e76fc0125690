package greyground.desk.setting;

import greyground.desk.model.Station;
import greyground.desk.model.Unit;
import greyground.desk.setting.Setting.Choice;
import greyground.desk.setting.Setting.JobNumber;
import greyground.desk.setting.Setting.Text;
import greyground.desk.setting.Setting.Way;
import java.util.List;

/** What is settled of the picture. */
public final class ArtSettings {
    /** A fragment that is all of the picture, in the job's words. */
    public static final String WHOLE = "0%,0%,100%,100%";

    static final List<Setting> ALL = List.of(
            new Text(
                    "title",
                    Station.ART,
                    "Title",
                    "title",
                    "Printed on the film and at the head of its plan. One line, at most 120 characters."),
            new JobNumber(
                    "straighten",
                    Station.ART,
                    "Turn",
                    Unit.DEGREES,
                    -45,
                    315,
                    0.1,
                    "rotate",
                    0,
                    "0",
                    "Clockwise. Whole quarter turns move pixels as they are; what is left over straightens a crooked scan."),
            new JobNumber(
                    "white",
                    Station.ART,
                    "Paper white",
                    Unit.PERCENT,
                    0,
                    100,
                    0.5,
                    "white",
                    0,
                    "100%",
                    "The reflectance that counts as bare paper: it, and all that is lighter, stays clear film. Found in the picture unless you set it; pick it from the picture with W."),
            new JobNumber(
                    "black",
                    Station.ART,
                    "Ink black",
                    Unit.PERCENT,
                    0,
                    100,
                    0.5,
                    "black",
                    0,
                    "0%",
                    "The reflectance that counts as full black: it, and all that is darker, gets the darkest tone the plate can hold. Pick it from the picture with B."),
            new Choice(
                    "range",
                    Station.ART,
                    "Tones",
                    List.of(
                            Way.of("even to the eye", "range", "lightness"),
                            Way.of("keep middle tones", "range", "black-point"),
                            Way.of("even in density", "range", "density")),
                    words -> true,
                    "How the picture's range is fitted to the shorter one of a print. Even to the eye spreads all lightnesses alike; keep middle tones holds them where they are and gives way in the darks; even in density treats both like photographs."),
            new JobNumber(
                    "crop-left",
                    Station.ART,
                    "Crop from left",
                    Unit.PERCENT,
                    0,
                    99,
                    0.5,
                    "crop",
                    0,
                    WHOLE,
                    "Where the fragment begins, in percent of the picture's width. C, then drag on the picture, draws it by hand."),
            new JobNumber(
                    "crop-top",
                    Station.ART,
                    "Crop from top",
                    Unit.PERCENT,
                    0,
                    99,
                    0.5,
                    "crop",
                    1,
                    WHOLE,
                    "Where the fragment begins, in percent of the picture's height."),
            new JobNumber(
                    "crop-width",
                    Station.ART,
                    "Crop width",
                    Unit.PERCENT,
                    1,
                    100,
                    0.5,
                    "crop",
                    2,
                    WHOLE,
                    "How wide the fragment is, in percent of the picture's width."),
            new JobNumber(
                    "crop-height",
                    Station.ART,
                    "Crop height",
                    Unit.PERCENT,
                    1,
                    100,
                    0.5,
                    "crop",
                    3,
                    WHOLE,
                    "How tall the fragment is, in percent of the picture's height."),
            new JobNumber(
                    "page",
                    Station.ART,
                    "Picture in file",
                    Unit.COUNT,
                    1,
                    100000,
                    1,
                    "page",
                    0,
                    "1",
                    "Which picture, where the file holds several."));

    private ArtSettings() {}
}
