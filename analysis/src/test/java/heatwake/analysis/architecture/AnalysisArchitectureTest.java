package heatwake.analysis.architecture;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;

/** Keeps the analysis pure and its packages without cycles. */
@AnalyzeClasses(
    packages = "heatwake.analysis",
    importOptions = ImportOption.DoNotIncludeTests.class)
class AnalysisArchitectureTest {
  @ArchTest
  static void doesNoInputOrOutput(JavaClasses classes) {
    noClasses()
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage(
            "java.io..",
            "java.nio.file..",
            "java.nio.channels..",
            "java.net..",
            "java.sql..",
            "javax.swing..",
            "java.awt..")
        .check(classes);
  }

  @ArchTest
  static void readsNoClockAndStartsNoThread(JavaClasses classes) {
    noClasses()
        .should()
        .dependOnClassesThat()
        .haveFullyQualifiedName("java.time.Clock")
        .orShould()
        .callMethod(System.class, "currentTimeMillis")
        .orShould()
        .callMethod(System.class, "nanoTime")
        .orShould()
        .callMethod(java.time.Instant.class, "now")
        .orShould()
        .dependOnClassesThat()
        .resideInAPackage("java.util.concurrent..")
        .check(classes);
  }

  @ArchTest
  static void knowsNothingOfTheOtherModules(JavaClasses classes) {
    noClasses()
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage("heatwake.collector..", "heatwake.dashboard..")
        .check(classes);
  }

  @ArchTest
  static void packagesHaveNoCycles(JavaClasses classes) {
    slices().matching("heatwake.analysis.(*)..").should().beFreeOfCycles().check(classes);
  }

  @ArchTest
  static void noPackageIsADrawer(JavaClasses classes) {
    noClasses()
        .should()
        .resideInAnyPackage(
            "..util..", "..common..", "..helper..", "..manager..", "..impl..", "..misc..")
        .check(classes);
  }
}
