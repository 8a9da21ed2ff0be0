package org.axlecause.intake;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import org.axlecause.shared.Problem;
import org.erdtman.jcs.NumberToJSON;

/** Finds texts and numbers that can't be stored and compared without change: NUL, half characters, over-long decimals. */
final class Wording {

    private Wording() {}

    /** Numbers in a value that don't survive, with pointers below the given one. */
    static List<Problem.Cause> aboutNumbers(String pointer, JsonNode value) {
        List<Problem.Cause> causes = new ArrayList<>();
        collect(pointer, value, Wording::number, causes);
        return causes;
    }

    /** Texts in a value that can't be stored, with pointers below the given one. */
    static List<Problem.Cause> aboutTexts(String pointer, JsonNode value) {
        List<Problem.Cause> causes = new ArrayList<>();
        collect(pointer, value, Wording::text, causes);
        return causes;
    }

    private static void collect(String pointer, JsonNode value, Finder finder, List<Problem.Cause> causes) {
        finder.find(pointer, value, causes);
        if (value.isObject()) {
            value.properties()
                    .forEach(member -> collect(
                            pointer + "/" + SchemaWords.escaped(member.getKey()), member.getValue(), finder, causes));
        } else if (value.isArray()) {
            for (int i = 0; i < value.size(); i++) {
                if (value.get(i).isContainerNode() || !isHarmless(value.get(i))) {
                    collect(pointer + "/" + i, value.get(i), finder, causes);
                }
            }
        }
    }

    /** A number that a double holds for certain; traces are full of them. */
    private static boolean isHarmless(JsonNode value) {
        return value.isInt() || value.isNull();
    }

    private static void number(String pointer, JsonNode value, List<Problem.Cause> causes) {
        if (value.isNumber() && !survives(value.decimalValue())) {
            causes.add(new Problem.Cause(
                    pointer,
                    "The number " + SchemaWords.shown(value)
                            + " has more digits than computers exchange safely; expected is a number that is the same"
                            + " as an IEEE 754 double, so at most 15 significant digits. Round it."));
        }
    }

    private static void text(String pointer, JsonNode value, List<Problem.Cause> causes) {
        if (value.isTextual() && isBroken(value.textValue())) {
            causes.add(new Problem.Cause(pointer, brokenText("The text")));
        }
        value.fieldNames().forEachRemaining(name -> {
            if (isBroken(name)) {
                causes.add(new Problem.Cause(pointer, brokenText("A member's name")));
            }
        });
    }

    private static String brokenText(String what) {
        return what + " holds a NUL or half of a surrogate pair; expected are whole Unicode characters other than"
                + " U+0000. Take it out.";
    }

    private static boolean isBroken(String text) {
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c == 0 || Character.isLowSurrogate(c)) {
                return true;
            }
            if (Character.isHighSurrogate(c)) {
                i++;
                if (i == text.length() || !Character.isLowSurrogate(text.charAt(i))) {
                    return true;
                }
            }
        }
        return false;
    }

    /** Whether the number is exactly what canonical JSON (RFC 8785) writes for it. */
    private static boolean survives(BigDecimal number) {
        double nearest = number.doubleValue();
        if (Double.isInfinite(nearest)) {
            return false;
        }
        try {
            return new BigDecimal(NumberToJSON.serializeNumber(nearest)).compareTo(number) == 0;
        } catch (IOException e) {
            return false;
        }
    }

    private interface Finder {
        void find(String pointer, JsonNode value, List<Problem.Cause> causes);
    }
}
