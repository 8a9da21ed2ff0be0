package org.axlecause.facts;

import java.util.Locale;

/** Turns an enum constant into its kebab-case code. */
final class Codes {

    /** Codes of a type by ordinal, made once: they are asked for thousands of times in a judgement. */
    private static final ClassValue<String[]> BY_TYPE = new ClassValue<>() {
        @Override
        protected String[] computeValue(Class<?> type) {
            Object[] constants = type.getEnumConstants();
            String[] codes = new String[constants.length];
            for (int i = 0; i < codes.length; i++) {
                codes[i] =
                        ((Enum<?>) constants[i]).name().toLowerCase(Locale.ROOT).replace('_', '-');
            }
            return codes;
        }
    };

    private Codes() {}

    @SuppressWarnings("EnumOrdinal") // Why: the array is made in this run, so no ordinal outlives it.
    static String kebab(Enum<?> constant) {
        return BY_TYPE.get(constant.getDeclaringClass())[constant.ordinal()];
    }
}
