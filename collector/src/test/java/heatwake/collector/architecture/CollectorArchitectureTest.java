package heatwake.collector.architecture;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;

/** Keeps the collector free of judgement and of windows, and its packages without cycles. */
@AnalyzeClasses(
    packages = "heatwake.collector",
    importOptions = ImportOption.DoNotIncludeTests.class)
class CollectorArchitectureTest {
  @ArchTest
  static void knowsNothingOfTheDashboard(JavaClasses classes) {
    noClasses()
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage("heatwake.dashboard..", "javax.swing..", "java.awt..")
        .check(classes);
  }

  @ArchTest
  static void packagesHaveNoCycles(JavaClasses classes) {
    slices().matching("heatwake.collector.(*)..").should().beFreeOfCycles().check(classes);
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
