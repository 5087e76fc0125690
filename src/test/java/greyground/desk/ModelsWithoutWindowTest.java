package greyground.desk;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.importer.ClassFileImporter;
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
                                Unit.class,
                                Viewport.class));
    }
}
