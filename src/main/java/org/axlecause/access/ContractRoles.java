package org.axlecause.access;

import io.quarkus.smallrye.openapi.OpenApiFilter;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.axlecause.shared.Problem;
import org.eclipse.microprofile.openapi.OASFactory;
import org.eclipse.microprofile.openapi.OASFilter;
import org.eclipse.microprofile.openapi.models.OpenAPI;
import org.eclipse.microprofile.openapi.models.Operation;
import org.eclipse.microprofile.openapi.models.security.SecurityScheme;
import org.jboss.jandex.AnnotationInstance;
import org.jboss.jandex.AnnotationTarget;
import org.jboss.jandex.AnnotationValue;
import org.jboss.jandex.DotName;
import org.jboss.jandex.IndexView;
import org.jboss.jandex.MethodInfo;
import org.jspecify.annotations.Nullable;

/**
 * Makes the contract say of each operation what its annotations hold: that a key is needed, of which roles
 * ({@code x-roles}), and that every refusal is a problem document.
 */
@OpenApiFilter(OpenApiFilter.RunStage.BUILD)
public final class ContractRoles implements OASFilter {

    private static final DotName NEEDS = DotName.createSimple(Needs.class);
    private static final DotName OPERATION =
            DotName.createSimple(org.eclipse.microprofile.openapi.annotations.Operation.class);
    private static final String SCHEME = "key";

    private final Map<String, List<String>> roles = new HashMap<>();

    /** Learns the roles of each operation from the build's index. */
    public ContractRoles(IndexView index) {
        for (AnnotationInstance operation : index.getAnnotations(OPERATION)) {
            AnnotationValue id = operation.value("operationId");
            if (id != null && operation.target().kind() == AnnotationTarget.Kind.METHOD) {
                roles.put(id.asString(), rolesOf(operation.target().asMethod()));
            }
        }
    }

    private static List<String> rolesOf(MethodInfo method) {
        AnnotationInstance ofMethod = method.annotation(NEEDS);
        AnnotationInstance needs =
                ofMethod != null ? ofMethod : method.declaringClass().declaredAnnotation(NEEDS);
        return needs == null ? List.of() : codes(needs.value());
    }

    private static List<String> codes(@Nullable AnnotationValue named) {
        TreeSet<String> codes = new TreeSet<>();
        if (named == null) {
            Stream.of(Role.values()).map(Role::toString).forEach(codes::add);
        } else {
            codes.add(Role.ADMIN.toString());
            Stream.of(named.asEnumArray())
                    .map(name -> Role.valueOf(name).toString())
                    .forEach(codes::add);
        }
        return List.copyOf(codes);
    }

    @Override
    public void filterOpenAPI(OpenAPI document) {
        if (document.getPaths() == null || document.getComponents() == null) {
            return;
        }
        document.getComponents()
                .addSecurityScheme(
                        SCHEME,
                        OASFactory.createSecurityScheme()
                                .type(SecurityScheme.Type.HTTP)
                                .scheme("bearer")
                                .description("A key of this service; none is needed where access is open."));
        document.getPaths()
                .getPathItems()
                .values()
                .forEach(path -> path.getOperations().values().forEach(this::complete));
    }

    private void complete(Operation operation) {
        operation.addExtension("x-roles", roles.getOrDefault(operation.getOperationId(), List.of()));
        operation.addSecurityRequirement(OASFactory.createSecurityRequirement().addScheme(SCHEME));
        operation
                .getResponses()
                .defaultValue(OASFactory.createAPIResponse()
                        .description("The request is refused, or the service has failed; the code says why.")
                        .content(OASFactory.createContent()
                                .addMediaType(
                                        Problem.MEDIA_TYPE,
                                        OASFactory.createMediaType()
                                                .schema(OASFactory.createSchema()
                                                        .ref("#/components/schemas/Problem")))));
    }
}
