package org.axlecause.inference;

import java.lang.reflect.Method;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.drools.modelcompiler.constraints.LambdaConstraint;
import org.jspecify.annotations.Nullable;

/**
 * A constraint that asks no more of a fact than that one of its codes is among some, such as {@code kind ==
 * FigureKind.DRAG} or {@code code in (CauseCode.PADS_WORN, CauseCode.PADS_GLAZED)}.
 *
 * @param property what reads the code from the fact
 * @param codes codes that meet it
 */
record CodeConstraint(Method property, List<Enum<?>> codes) {

    private static final String CODE = "\\w+\\.\\w+";
    private static final Pattern EQUAL = Pattern.compile("(\\w+)\\s*==\\s*(" + CODE + ")");
    private static final Pattern AMONG =
            Pattern.compile("(\\w+)\\s+in\\s*\\(\\s*(" + CODE + "(?:\\s*,\\s*" + CODE + ")*)\\s*\\)");

    /** Reads a constraint as its rule writes it; null where it asks anything else, or of no enum. */
    static @Nullable CodeConstraint of(Class<?> fact, Object constraint) {
        if (!(constraint instanceof LambdaConstraint lambda)) {
            return null;
        }
        String written = lambda.getPredicateInformation().getStringConstraint();
        return written == null ? null : of(fact, written.strip());
    }

    static @Nullable CodeConstraint of(Class<?> fact, String written) {
        for (Pattern pattern : List.of(EQUAL, AMONG)) {
            Matcher asked = pattern.matcher(written);
            if (asked.matches()) {
                Method property = property(fact, asked.group(1));
                return property == null ? null : of(property, asked.group(2).split("\\s*,\\s*", -1));
            }
        }
        return null;
    }

    private static @Nullable CodeConstraint of(Method property, String[] named) {
        List<Enum<?>> codes = new ArrayList<>();
        for (String name : named) {
            String type = name.substring(0, name.indexOf('.'));
            Enum<?> code = code(property.getReturnType(), name.substring(name.indexOf('.') + 1));
            if (code == null || !property.getReturnType().getSimpleName().equals(type)) {
                return null;
            }
            codes.add(code);
        }
        return new CodeConstraint(property, List.copyOf(codes));
    }

    private static @Nullable Enum<?> code(Class<?> type, String name) {
        return Arrays.stream(type.getEnumConstants())
                .map(constant -> (Enum<?>) constant)
                .filter(constant -> constant.name().equals(name))
                .findFirst()
                .orElse(null);
    }

    private static @Nullable Method property(Class<?> fact, String name) {
        return Arrays.stream(fact.getMethods())
                .filter(method -> method.getName().equals(name)
                        && method.getParameterCount() == 0
                        && method.getReturnType().isEnum())
                .findFirst()
                .orElse(null);
    }
}
