package heatwake.collector.architecture;

import static com.tngtech.archunit.base.DescribedPredicate.describe;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import java.sql.Statement;

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

  /** What came from a person or a wire reaches the database as a parameter, never as SQL. */
  @ArchTest
  static void sqlIsPrepared(JavaClasses classes) {
    noClasses()
        .that()
        .haveNameNotMatching("heatwake\\.collector\\.store\\.(Schema|Transactions)")
        .should()
        .callMethodWhere(
            describe(
                "it runs SQL that was not prepared",
                call ->
                    call.getTarget().getOwner().isAssignableTo(Statement.class)
                        && call.getTarget().getName().startsWith("execute")
                        && !call.getTarget().getRawParameterTypes().isEmpty()))
        .check(classes);
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
