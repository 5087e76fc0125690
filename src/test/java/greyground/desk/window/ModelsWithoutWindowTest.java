package greyground.desk.window;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.importer.ClassFileImporter;
import greyground.desk.look.Bell;
import greyground.desk.model.BenchClocks;
import greyground.desk.model.BenchModel;
import greyground.desk.model.BenchNotes;
import greyground.desk.model.BenchState;
import greyground.desk.model.BenchWorker;
import greyground.desk.model.Comparison;
import greyground.desk.model.Countdown;
import greyground.desk.model.CropFrame;
import greyground.desk.model.DeskFolder;
import greyground.desk.model.DeskWords;
import greyground.desk.model.FilmExport;
import greyground.desk.model.Hand;
import greyground.desk.model.History;
import greyground.desk.model.LabelPlaces;
import greyground.desk.model.LiveDesk;
import greyground.desk.model.LongWork;
import greyground.desk.model.PictureMarks;
import greyground.desk.model.PicturePorts;
import greyground.desk.model.Place;
import greyground.desk.model.PrintSource;
import greyground.desk.model.PrintingModel;
import greyground.desk.model.ProofWords;
import greyground.desk.model.RecentFiles;
import greyground.desk.model.Recovery;
import greyground.desk.model.RulerTicks;
import greyground.desk.model.Station;
import greyground.desk.model.TestPlateModel;
import greyground.desk.model.TestPlateState;
import greyground.desk.model.TimeLeft;
import greyground.desk.model.Turning;
import greyground.desk.model.Viewport;
import greyground.desk.setting.FigureWords;
import greyground.desk.setting.Setting;
import greyground.desk.setting.Settings;
import org.junit.jupiter.api.Test;

/** What decides things at the desk is tested without a window, so it must not need one. */
class ModelsWithoutWindowTest {
    @Test
    void modelsKnowNothingOfJavaFx() {
        noClasses()
                .should()
                .dependOnClassesThat()
                .resideInAPackage("javafx..")
                .check(new ClassFileImporter()
                        .importClasses(
                                Bell.class,
                                BenchClocks.class,
                                BenchModel.class,
                                BenchNotes.class,
                                BenchState.class,
                                BenchWorker.class,
                                Comparison.class,
                                Countdown.class,
                                CropFrame.class,
                                DeskFolder.class,
                                DeskWords.class,
                                FigureWords.class,
                                FilmExport.class,
                                Hand.class,
                                History.class,
                                LabelPlaces.class,
                                LiveDesk.class,
                                LongWork.class,
                                PictureMarks.class,
                                PicturePorts.class,
                                Place.class,
                                PrintSource.class,
                                PrintingModel.class,
                                ProofWords.class,
                                RecentFiles.class,
                                Recovery.class,
                                RulerTicks.class,
                                Setting.class,
                                Settings.class,
                                Station.class,
                                TestPlateModel.class,
                                TestPlateState.class,
                                TimeLeft.class,
                                Turning.class,
                                Viewport.class));
    }
}
