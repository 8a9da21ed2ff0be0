package org.axlecause;

import static java.util.stream.Collectors.toCollection;
import static java.util.stream.Collectors.toSet;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaCodeUnit;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.library.dependencies.SlicesRuleDefinition;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.util.Calendar;
import java.util.Date;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TreeSet;
import java.util.concurrent.ThreadLocalRandom;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.jspecify.annotations.NullMarked;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Holds the house to its plan: which package may import which, and which library stays behind which door. */
class ArchitectureTest {

    private static final String ROOT = "org.axlecause";

    private static final JavaClasses MAIN = new ClassFileImporter()
            .withImportOption(new ImportOption.DoNotIncludeTests())
            .importPackages(ROOT);
    private static final JavaClasses TESTS = new ClassFileImporter()
            .withImportOption(new ImportOption.OnlyIncludeTests())
            .importPackages(ROOT);

    /** They stand between the stores and the server: start it, refuse a wrong role or schema, bind a transaction to a tenant. */
    private static final Set<String> KEEP_THE_DATABASE = Set.of(
            "EmbeddedDatabase",
            "RoleCheck",
            "SchemaCheck",
            "DatabaseReady",
            "TenantTransaction",
            "Write",
            "QueryResults",
            "EntityTenant",
            "DatabaseException");

    /** They say why the service can't start, before there is a log, and what a command has made or found. */
    private static final Set<String> WRITE_TO_THE_CONSOLE =
            Set.of("DatabaseAtHand", "FleetCommand", "MakeKeyCommand", "RecountCommand", "VerifyCommand");

    /** What statistics calculates with: numbers in, numbers out. */
    private static final Set<String> STATISTICAL_METHODS = Set.of(
            "BetaShare",
            "Calibration",
            "CoOccurrence",
            "ConfidenceLevel",
            "ControlChart",
            "FalseDiscovery",
            "Funnel",
            "FunnelLimits",
            "Interval",
            "KaplanMeier",
            "LogRank",
            "Moments",
            "ObservedExpected",
            "Pareto",
            "Proportion",
            "ReferenceRates",
            "Significance",
            "StepChange",
            "SurvivalStep",
            "SurvivalTime",
            "TwoProportions");

    /** The entry point, the only class above the packages. */
    private static final Set<String> ABOVE_THE_PACKAGES = Set.of("Axlecause", "package-info");

    private static final Set<String> UNWANTED_NAME_ENDINGS =
            Set.of("Impl", "Util", "Utils", "Manager", "Helper", "Service", "Dto");

    /** The packages, lowest first, each with what it may import; constants, so that no name can be misspelt. */
    private enum Slice {
        FACTS,
        SHARED,
        MEASUREMENT(FACTS, SHARED),
        DIAGNOSIS(FACTS, SHARED),
        REPAIR(FACTS, SHARED),
        REGIMES(FACTS, SHARED),
        INFERENCE(FACTS, SHARED),
        JUDGEMENT(FACTS, SHARED, MEASUREMENT, DIAGNOSIS, REPAIR, REGIMES, INFERENCE),
        ACCESS(FACTS, SHARED),
        CATALOGUE(FACTS, SHARED, INFERENCE, REGIMES, DIAGNOSIS, ACCESS),
        POLICY(JUDGEMENT.andBelow(), ACCESS),
        CASEFILE(JUDGEMENT.andBelow(), ACCESS),
        INTAKE(CASEFILE.andBelow(), POLICY, CATALOGUE),
        STATISTICS(CASEFILE.andBelow(), POLICY, CATALOGUE),
        OUTBOUND(CASEFILE.andBelow(), POLICY, CATALOGUE),
        AUDIT(CASEFILE.andBelow()),
        FLEET(FACTS, SHARED, MEASUREMENT, ACCESS, INTAKE),
        PAGES(INTAKE.andBelow(), STATISTICS, OUTBOUND);

        private final Set<Slice> mayImport;

        Slice(Slice... mayImport) {
            this(Set.of(), mayImport);
        }

        Slice(Set<Slice> lower, Slice... mayImport) {
            this.mayImport = Stream.concat(lower.stream(), Stream.of(mayImport)).collect(toSet());
        }

        private Set<Slice> andBelow() {
            return Stream.concat(mayImport.stream(), Stream.of(this)).collect(toSet());
        }

        private boolean holds(JavaClass type) {
            return isIn(ROOT + "." + name().toLowerCase(Locale.ROOT), type);
        }

        private boolean mayUse(JavaClass type) {
            return holds(type)
                    || mayImport.stream().anyMatch(other -> other.holds(type))
                    || (this == FLEET && named(type, "Store"));
        }
    }

    /** Libraries that stay behind a door; the witness proves that the prefix is spelt as the library spells it. */
    private enum Library {
        ENGINE_API("org.kie", "org.kie.api.KieBase"),
        ENGINE("org.drools", "org.drools.core.common.InternalFactHandle"),
        HTTP("jakarta.ws.rs", "jakarta.ws.rs.Path"),
        HTTP_SERVER("org.jboss.resteasy", "org.jboss.resteasy.reactive.RestResponse"),
        PERSISTENCE("jakarta.persistence", "jakarta.persistence.Entity"),
        HIBERNATE("org.hibernate", "org.hibernate.Session"),
        PANACHE("io.quarkus.hibernate", "io.quarkus.hibernate.orm.panache.PanacheRepository"),
        FLYWAY("org.flywaydb", "org.flywaydb.core.Flyway"),
        POSTGRESQL("org.postgresql", "org.postgresql.PGConnection"),
        EMBEDDED_POSTGRESQL("io.zonky", "io.zonky.test.db.postgres.embedded.EmbeddedPostgres"),
        POOL("io.agroal", "io.agroal.api.AgroalDataSource"),
        JDBC("java.sql", "java.sql.Connection"),
        JDBC_SOURCES("javax.sql", "javax.sql.DataSource"),
        TRANSACTIONS("jakarta.transaction", "jakarta.transaction.Transactional"),
        CONTAINER("io.quarkus", "io.quarkus.runtime.Quarkus"),
        SETTINGS("org.eclipse.microprofile", "org.eclipse.microprofile.config.Config"),
        EVENT_LOOP("io.vertx", "io.vertx.core.Vertx"),
        LOGGING("org.jboss.logging", "org.jboss.logging.Logger"),
        LOGGING_OF_OTHERS("org.slf4j", "org.slf4j.Logger"),
        LOGGING_OF_THE_JDK("java.util.logging", "java.util.logging.Logger"),
        NETWORK("java.net.http", "java.net.http.HttpClient"),
        KAFKA("org.apache.kafka", "org.apache.kafka.clients.producer.KafkaProducer"),
        BEANS("jakarta.enterprise", "jakarta.enterprise.context.ApplicationScoped"),
        INJECTION("jakarta.inject", "jakarta.inject.Inject");

        private static final Set<Library> RULE_ENGINE = Set.of(ENGINE_API, ENGINE);
        private static final Set<Library> WEB = Set.of(HTTP, HTTP_SERVER);
        private static final Set<Library> DATABASE = Set.of(
                PERSISTENCE, HIBERNATE, PANACHE, FLYWAY, POSTGRESQL, EMBEDDED_POSTGRESQL, POOL, JDBC, JDBC_SOURCES);
        private static final Set<Library> WIRING = Set.of(BEANS, INJECTION);
        private static final Set<Library> EFFECTS = Set.of(
                TRANSACTIONS,
                CONTAINER,
                SETTINGS,
                EVENT_LOOP,
                LOGGING,
                LOGGING_OF_OTHERS,
                LOGGING_OF_THE_JDK,
                NETWORK,
                KAFKA);

        private final String prefix;
        private final String witness;

        Library(String prefix, String witness) {
            this.prefix = prefix;
            this.witness = witness;
        }

        private static Predicate<JavaClass> any(Set<Library> libraries) {
            return type -> libraries.stream().anyMatch(library -> isIn(library.prefix, type));
        }
    }

    @ParameterizedTest
    @EnumSource
    void a_package_imports_only_what_lies_below_it(Slice slice) {
        assertThat(uses(slice::holds, type -> isIn(ROOT, type) && !slice.mayUse(type)))
                .as("imports of %s beyond %s", slice, slice.mayImport)
                .isEmpty();
    }

    @Test
    void every_class_lives_in_a_package_of_the_plan() {
        assertThat(MAIN).isNotEmpty();
        assertThat(names(type -> Stream.of(Slice.values()).noneMatch(slice -> slice.holds(type))
                        && !(type.getPackageName().equals(ROOT) && ABOVE_THE_PACKAGES.contains(outermost(type)))))
                .isEmpty();
    }

    @Test
    void packages_are_free_of_cycles() {
        SlicesRuleDefinition.slices()
                .matching(ROOT + ".(*)..")
                .should()
                .beFreeOfCycles()
                .check(MAIN);
    }

    @Test
    void every_package_is_null_marked() {
        Set<String> packages = MAIN.stream().map(JavaClass::getPackageName).collect(toCollection(TreeSet::new));

        assertThat(packages)
                .allSatisfy(name ->
                        assertThat(Class.forName(name + ".package-info")).hasAnnotation(NullMarked.class));
    }

    @Test
    void the_rule_engine_stays_inside_inference() {
        assertThat(uses(not(Slice.INFERENCE::holds), Library.any(Library.RULE_ENGINE)))
                .isEmpty();
    }

    @Test
    void only_resources_and_shared_speak_http() {
        Predicate<JavaClass> maySpeakHttp = type -> named(type, "Resource") || Slice.SHARED.holds(type);

        assertThat(uses(not(maySpeakHttp), Library.any(Library.WEB))).isEmpty();
    }

    @Test
    void only_entities_stores_and_the_keepers_touch_the_database() {
        Predicate<JavaClass> mayTouchIt =
                type -> named(type, "Entity") || named(type, "Store") || KEEP_THE_DATABASE.contains(outermost(type));

        assertThat(uses(not(mayTouchIt), Library.any(Library.DATABASE))).isEmpty();
    }

    @Test
    void transactions_begin_in_use_cases() {
        assertThat(uses(
                        type -> named(type, "Resource") || named(type, "Entity") || named(type, "Store"),
                        type -> type.isEquivalentTo(Transactional.class)))
                .isEmpty();
    }

    @Test
    void judgement_and_everything_below_it_is_pure() {
        Predicate<JavaClass> pure = type ->
                Slice.JUDGEMENT.andBelow().stream().anyMatch(slice -> slice.holds(type)) && !Slice.SHARED.holds(type);
        Predicate<JavaClass> chance =
                type -> Stream.of(Clock.class, Random.class, SplittableRandom.class, ThreadLocalRandom.class)
                        .anyMatch(type::isEquivalentTo);

        assertThat(uses(pure, chance)).isEmpty();
        assertThat(uses(pure, Library.any(Library.DATABASE))).isEmpty();
        assertThat(uses(pure, Library.any(Library.WEB))).isEmpty();
        assertThat(uses(pure, Library.any(Library.EFFECTS))).isEmpty();
        assertThat(uses(
                        type -> pure.test(type) && !Slice.INFERENCE.holds(type) && !Slice.JUDGEMENT.holds(type),
                        Library.any(Library.WIRING)))
                .isEmpty();
        assertThat(calls(pure, "java.lang.Math.random", "java.util.UUID.randomUUID", "java.lang.System.nanoTime"))
                .isEmpty();
    }

    @Test
    void statistical_methods_know_numbers_alone() {
        Predicate<JavaClass> methods =
                type -> Slice.STATISTICS.holds(type) && STATISTICAL_METHODS.contains(outermost(type));
        Predicate<JavaClass> numbers = type -> methods.test(type)
                || Stream.of("java.lang", "java.util", "org.hipparchus", "org.jspecify.annotations")
                        .anyMatch(prefix -> isIn(prefix, type));
        Predicate<JavaClass> chance = type -> Stream.of(Random.class, SplittableRandom.class, ThreadLocalRandom.class)
                .anyMatch(type::isEquivalentTo);

        assertThat(uses(methods, numbers.negate().or(chance))).isEmpty();
        assertThat(calls(methods, "java.lang.Math.random", "java.util.UUID.randomUUID", "java.lang.System.nanoTime"))
                .isEmpty();
    }

    @Test
    void facts_are_records_enums_interfaces_or_frozen_values_of_the_jdk() {
        assertThat(names(type -> Slice.FACTS.holds(type)
                        && !type.isRecord()
                        && !type.isEnum()
                        && !type.isInterface()
                        && !isHiddenInside(type)
                        && !isFrozen(type)))
                .isEmpty();
        assertThat(uses(
                        Slice.FACTS::holds,
                        type -> !isIn("java", type) && !isIn("org.jspecify.annotations", type) && !isIn(ROOT, type)))
                .isEmpty();
    }

    @Test
    void the_time_comes_from_a_clock() {
        assertThat(calls(type -> true, "java.lang.System.currentTimeMillis")).isEmpty();
        assertThat(MAIN.stream()
                        .flatMap(type -> type.getMethodCallsFromSelf().stream())
                        .filter(call -> call.getName().equals("now")
                                && isIn("java.time", call.getTargetOwner())
                                && call.getTarget().getRawParameterTypes().stream()
                                        .noneMatch(parameter -> parameter.isEquivalentTo(Clock.class)))
                        .map(JavaAccess::getDescription))
                .isEmpty();
        assertThat(calls(
                        not(Slice.SHARED::holds),
                        "java.time.Clock.systemUTC",
                        "java.time.Clock.systemDefaultZone",
                        "java.time.Clock.system"))
                .isEmpty();
        assertThat(uses(type -> true, type -> type.isEquivalentTo(Date.class) || type.isEquivalentTo(Calendar.class)))
                .isEmpty();
    }

    @Test
    void nothing_writes_to_the_console_but_a_refusal_to_start() {
        assertThat(MAIN.stream()
                        .filter(type -> !WRITE_TO_THE_CONSOLE.contains(outermost(type)))
                        .flatMap(type -> type.getAccessesFromSelf().stream())
                        .filter(access -> (access.getTargetOwner().isEquivalentTo(System.class)
                                        && Set.of("out", "err").contains(access.getName()))
                                || access.getName().equals("printStackTrace"))
                        .map(JavaAccess::getDescription))
                .isEmpty();
    }

    @Test
    void names_say_what_a_type_is() {
        assertThat(names(type -> UNWANTED_NAME_ENDINGS.stream().anyMatch(ending -> named(type, ending))))
                .isEmpty();
    }

    @Test
    void every_test_has_a_name_that_the_build_runs() {
        assertThat(TESTS).isNotEmpty();
        assertThat(TESTS.stream()
                        .filter(type -> type.getMethods().stream().anyMatch(ArchitectureTest::isTest))
                        .map(ArchitectureTest::outermost))
                .allMatch(name -> name.endsWith("Test") || name.endsWith("IT"));
    }

    @Test
    void every_test_name_is_a_sentence() {
        assertThat(TESTS.stream()
                        .flatMap(type -> type.getMethods().stream())
                        .filter(ArchitectureTest::isTest)
                        .filter(method -> !method.getName().matches("[a-z0-9]+(_[a-z0-9]+)+"))
                        .map(JavaCodeUnit::getFullName))
                .isEmpty();
    }

    @ParameterizedTest
    @EnumSource
    void every_library_is_spelt_as_it_spells_itself(Library library) throws ClassNotFoundException {
        Class<?> witness = Class.forName(library.witness, false, ArchitectureTest.class.getClassLoader());

        assertThat(witness.getPackageName() + ".").startsWith(library.prefix + ".");
    }

    @Test
    void every_exception_that_is_named_here_exists() {
        Set<String> known = MAIN.stream().map(ArchitectureTest::outermost).collect(toSet());

        assertThat(known)
                .containsAll(KEEP_THE_DATABASE)
                .containsAll(WRITE_TO_THE_CONSOLE)
                .containsAll(STATISTICAL_METHODS)
                .containsAll(ABOVE_THE_PACKAGES);
    }

    private static boolean isIn(String prefix, JavaClass type) {
        return (type.getBaseComponentType().getPackageName() + ".").startsWith(prefix + ".");
    }

    private static boolean named(JavaClass type, String ending) {
        return outermost(type).endsWith(ending);
    }

    private static String outermost(JavaClass type) {
        String name = type.getBaseComponentType().getName();
        String simple = name.substring(name.lastIndexOf('.') + 1);
        int nested = simple.indexOf('$');
        return nested < 0 ? simple : simple.substring(0, nested);
    }

    private static boolean isHiddenInside(JavaClass type) {
        return type.isNestedClass() && !type.getModifiers().contains(JavaModifier.PUBLIC);
    }

    private static boolean isFrozen(JavaClass type) {
        return type.getFields().stream().allMatch(field -> field.getModifiers().contains(JavaModifier.FINAL))
                && (type.getModifiers().contains(JavaModifier.FINAL) || type.isAnonymousClass());
    }

    private static boolean isTest(JavaCodeUnit method) {
        return method.isAnnotatedWith(Test.class) || method.isAnnotatedWith(ParameterizedTest.class);
    }

    private static Predicate<JavaClass> not(Predicate<JavaClass> predicate) {
        return predicate.negate();
    }

    private static List<String> names(Predicate<JavaClass> which) {
        return MAIN.stream().filter(which).map(JavaClass::getName).sorted().toList();
    }

    private static List<String> uses(Predicate<JavaClass> who, Predicate<JavaClass> what) {
        return MAIN.stream()
                .filter(who)
                .flatMap(type -> type.getDirectDependenciesFromSelf().stream())
                .filter(dependency -> what.test(dependency.getTargetClass().getBaseComponentType()))
                .map(dependency -> dependency.getDescription())
                .distinct()
                .sorted()
                .toList();
    }

    private static List<String> calls(Predicate<JavaClass> who, String... methods) {
        Set<String> banned = Set.of(methods);
        return MAIN.stream()
                .filter(who)
                .flatMap(type -> type.getMethodCallsFromSelf().stream())
                .filter(call -> banned.contains(call.getTargetOwner().getName() + "." + call.getName()))
                .map(JavaAccess::getDescription)
                .sorted()
                .toList();
    }
}
