package org.axlecause.access;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaMethod;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.HEAD;
import jakarta.ws.rs.OPTIONS;
import jakarta.ws.rs.PATCH;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.PUT;
import java.lang.annotation.Annotation;
import java.util.List;
import java.util.stream.Stream;
import org.axlecause.shared.ForStrangers;
import org.junit.jupiter.api.Test;

class RoutesNameTheirRolesTest {

    private static final List<Class<? extends Annotation>> VERBS =
            List.of(GET.class, HEAD.class, POST.class, PUT.class, PATCH.class, DELETE.class, OPTIONS.class);

    @Test
    void every_route_says_who_may_use_it() {
        assertThat(routesForNobody(new ClassFileImporter()
                        .withImportOption(new ImportOption.DoNotIncludeTests())
                        .importPackages("org.axlecause")))
                .isEmpty();
    }

    @Test
    void strangers_may_sign_in_and_nothing_else() {
        assertThat(routes(new ClassFileImporter()
                                .withImportOption(new ImportOption.DoNotIncludeTests())
                                .importPackages("org.axlecause"))
                        .filter(RoutesNameTheirRolesTest::isForStrangers)
                        .map(method -> method.getOwner().getSimpleName() + "." + method.getName()))
                .containsExactlyInAnyOrder("SignInResource.ask", "SignInResource.signIn");
    }

    @Test
    void a_route_that_says_nothing_is_noticed() {
        assertThat(routesForNobody(new ClassFileImporter().importClasses(FaultyResource.class)))
                .containsExactly("org.axlecause.access.FaultyResource.nobody()");
    }

    private static List<String> routesForNobody(JavaClasses classes) {
        return routes(classes)
                .filter(method -> !isForStrangers(method))
                .filter(method -> !method.isAnnotatedWith(Needs.class)
                        && !method.getOwner().isAnnotatedWith(Needs.class))
                .map(JavaMethod::getFullName)
                .sorted()
                .toList();
    }

    private static Stream<JavaMethod> routes(JavaClasses classes) {
        return classes.stream()
                .flatMap(type -> type.getMethods().stream())
                .filter(method -> VERBS.stream().anyMatch(method::isAnnotatedWith));
    }

    private static boolean isForStrangers(JavaMethod method) {
        return method.isAnnotatedWith(ForStrangers.class);
    }
}
