package heatwake.dashboard.architecture;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;

/**
 * Keeps presenters apart from windows, the simulated plant apart from the rules, packages without
 * cycles.
 */
@AnalyzeClasses(
    packages = "heatwake.dashboard",
    importOptions = ImportOption.DoNotIncludeTests.class)
class DashboardArchitectureTest {
  @ArchTest
  static void presentersKnowNoWindow(JavaClasses classes) {
    noClasses()
        .that()
        .resideInAPackage("..present..")
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage("javax.swing..", "java.awt..")
        .allowEmptyShould(true)
        .check(classes);
  }

  @ArchTest
  static void plantSharesNothingWithTheAnalysis(JavaClasses classes) {
    noClasses()
        .that()
        .resideInAPackage("..demo.plant..")
        .should()
        .dependOnClassesThat()
        .resideInAPackage("heatwake.analysis..")
        .allowEmptyShould(true)
        .check(classes);
  }

  @ArchTest
  static void packagesHaveNoCycles(JavaClasses classes) {
    slices().matching("heatwake.dashboard.(*)..").should().beFreeOfCycles().check(classes);
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
