package org.axlecause.shared;

import com.fasterxml.jackson.annotation.JsonProperty;
import io.quarkus.smallrye.openapi.OpenApiFilter;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.eclipse.microprofile.openapi.OASFilter;
import org.eclipse.microprofile.openapi.models.OpenAPI;
import org.eclipse.microprofile.openapi.models.media.Schema;
import org.jboss.jandex.AnnotationInstance;
import org.jboss.jandex.ClassInfo;
import org.jboss.jandex.DotName;
import org.jboss.jandex.IndexView;
import org.jboss.jandex.RecordComponentInfo;
import org.jspecify.annotations.Nullable;

/**
 * Makes the generated contract say what the JSON does: enums by their codes, as required every member of a record that
 * can't be null, and nothing of a member that may be any JSON.
 */
@OpenApiFilter(OpenApiFilter.RunStage.BUILD)
public final class ContractWords implements OASFilter {

    private static final DotName RENAMED = DotName.createSimple(JsonProperty.class);
    private static final DotName SCHEMA =
            DotName.createSimple(org.eclipse.microprofile.openapi.annotations.media.Schema.class);
    private static final DotName NULLABLE = DotName.createSimple(Nullable.class);
    private static final String ANY_JSON = "JsonNode";
    private static final String OURS = "org.axlecause.";

    private final Map<String, List<ClassInfo>> types;

    /** Learns the types of ours from the build's index. */
    public ContractWords(IndexView index) {
        types = index.getKnownClasses().stream()
                .filter(type -> type.name().toString().startsWith(OURS) && (type.isRecord() || type.isEnum()))
                .collect(Collectors.groupingBy(ContractWords::nameInContract));
    }

    private static String nameInContract(ClassInfo type) {
        AnnotationInstance schema = type.declaredAnnotation(SCHEMA);
        return schema == null || schema.value("name") == null
                ? type.simpleName()
                : schema.value("name").asString();
    }

    @Override
    public void filterOpenAPI(OpenAPI document) {
        if (document.getComponents() == null || document.getComponents().getSchemas() == null) {
            return;
        }
        document.getComponents().removeSchema(ANY_JSON);
        document.getComponents().getSchemas().forEach((name, schema) -> {
            if (schema.getProperties() != null) {
                schema.getProperties().values().forEach(ContractWords::keepReferenceAlone);
            }
            ClassInfo type = typeBehind(name, schema);
            if (type != null && type.isEnum()) {
                schema.setEnumeration(codes(type));
            } else if (type != null) {
                schema.setRequired(requiredMembers(type, schema));
            }
        });
    }

    /**
     * What a reference says is enough, the generator adds a type that may differ; and a member that holds whatever JSON a
     * file has is no object with the getters of the JSON library.
     */
    private static void keepReferenceAlone(Schema member) {
        if (member.getRef() != null) {
            member.setType(null);
            if (member.getRef().endsWith("/" + ANY_JSON)) {
                member.setRef(null);
            }
        }
    }

    /** Types that share a simple name get a number behind it in the contract; their members tell them apart. */
    private @Nullable ClassInfo typeBehind(String name, Schema schema) {
        List<ClassInfo> alike = types.getOrDefault(name, types.getOrDefault(name.replaceAll("\\d+$", ""), List.of()));
        return alike.stream().filter(type -> fits(type, schema)).findFirst().orElse(null);
    }

    private static boolean fits(ClassInfo type, Schema schema) {
        if (schema.getEnumeration() != null) {
            return type.isEnum()
                    && type.enumConstants().stream()
                            .allMatch(constant -> schema.getEnumeration().contains(constant.name()));
        }
        return schema.getProperties() != null
                && type.isRecord()
                && type.recordComponents().stream()
                        .allMatch(component -> schema.getProperties().containsKey(member(component)));
    }

    private static @Nullable List<String> requiredMembers(ClassInfo type, Schema schema) {
        TreeSet<String> required = new TreeSet<>(schema.getRequired() == null ? List.of() : schema.getRequired());
        for (RecordComponentInfo component : type.recordComponents()) {
            if (schema.getProperties().containsKey(member(component))
                    && !component.type().hasAnnotation(NULLABLE)) {
                required.add(member(component));
            }
        }
        return required.isEmpty() ? null : new ArrayList<>(required);
    }

    /** The name on the wire, which may differ where Java has taken the word. */
    private static String member(RecordComponentInfo component) {
        AnnotationInstance renamed = component.annotation(RENAMED);
        return renamed == null || renamed.value() == null
                ? component.name()
                : renamed.value().asString();
    }

    private static List<Object> codes(ClassInfo type) {
        try {
            Class<?> constants = Class.forName(type.name().toString(), true, ContractWords.class.getClassLoader());
            return Stream.of(constants.getEnumConstants())
                    .<Object>map(Object::toString)
                    .toList();
        } catch (ClassNotFoundException e) {
            throw new IllegalStateException("The build can't load " + type.name() + " to read its codes", e);
        }
    }
}
