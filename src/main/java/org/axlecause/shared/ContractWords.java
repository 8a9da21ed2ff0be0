package org.axlecause.shared;

import io.quarkus.smallrye.openapi.OpenApiFilter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.eclipse.microprofile.openapi.OASFilter;
import org.eclipse.microprofile.openapi.models.OpenAPI;
import org.eclipse.microprofile.openapi.models.media.Schema;
import org.jboss.jandex.ClassInfo;
import org.jboss.jandex.DotName;
import org.jboss.jandex.IndexView;
import org.jboss.jandex.RecordComponentInfo;
import org.jspecify.annotations.Nullable;

/**
 * Makes the generated contract say what the JSON does: enums by their codes, and as required every member of a record
 * that can't be null.
 */
@OpenApiFilter(OpenApiFilter.RunStage.BUILD)
public final class ContractWords implements OASFilter {

    private static final DotName NULLABLE = DotName.createSimple(Nullable.class);
    private static final String OURS = "org.axlecause.";

    private final Map<String, ClassInfo> records;

    public ContractWords(IndexView index) {
        records = index.getKnownClasses().stream()
                .filter(type -> type.isRecord() && type.name().toString().startsWith(OURS))
                .collect(Collectors.toMap(ClassInfo::simpleName, Function.identity(), (one, other) -> one));
    }

    @Override
    public Schema filterSchema(Schema schema) {
        List<Object> constants = schema.getEnumeration();
        if (constants != null) {
            schema.setEnumeration(constants.stream().map(ContractWords::code).toList());
        }
        return schema;
    }

    @Override
    public void filterOpenAPI(OpenAPI document) {
        if (document.getComponents() == null || document.getComponents().getSchemas() == null) {
            return;
        }
        document.getComponents().getSchemas().forEach((name, schema) -> {
            ClassInfo type = records.get(name);
            if (type != null && schema.getProperties() != null) {
                schema.setRequired(requiredMembers(type, schema));
            }
        });
    }

    private static @Nullable List<String> requiredMembers(ClassInfo type, Schema schema) {
        TreeSet<String> required = new TreeSet<>(schema.getRequired() == null ? List.of() : schema.getRequired());
        for (RecordComponentInfo component : type.recordComponents()) {
            if (schema.getProperties().containsKey(component.name())
                    && !component.type().hasAnnotation(NULLABLE)) {
                required.add(component.name());
            }
        }
        return required.isEmpty() ? null : new ArrayList<>(required);
    }

    private static Object code(Object constant) {
        return constant instanceof String name && name.equals(name.toUpperCase(Locale.ROOT))
                ? name.toLowerCase(Locale.ROOT).replace('_', '-')
                : constant;
    }
}
