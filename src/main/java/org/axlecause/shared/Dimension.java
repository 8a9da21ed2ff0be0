package org.axlecause.shared;

import java.util.Locale;

/** Kind of a quantity, with the base unit that computing is done in and units that senders usually choose. */
public enum Dimension {
    FORCE("a force", "N", "N, kN, daN, kgf, [lbf_av]"),
    MASS("a mass", "kg", "kg, t, [lb_av]"),
    LENGTH("a length", "m", "mm, m, km, [in_i], [mi_i]"),
    PRESSURE("a pressure", "Pa", "bar, kPa, [psi]"),
    TIME("a time", "s", "ms, s, min, h"),
    SPEED("a speed", "m/s", "km/h, m/s"),
    ACCELERATION("an acceleration", "m/s2", "m/s2"),
    TEMPERATURE("a temperature", "Cel", "Cel, [degF]"),
    VOLUME("a volume", "m3", "L, mL"),
    TORQUE("a torque", "N.m", "N.m"),
    RATIO("a share", "1", "%"),
    NUMBER("a plain number", "1", "1");

    private final String words;
    private final String base;
    private final String examples;

    Dimension(String words, String base, String examples) {
        this.words = words;
        this.base = base;
        this.examples = examples;
    }

    /** The dimension in words, with its article. */
    public String words() {
        return words;
    }

    /** UCUM code of the unit that values are converted to. */
    public String base() {
        return base;
    }

    /** Units that senders usually choose, for messages. */
    public String examples() {
        return examples;
    }

    /** The dimension of that lower-case name. */
    public static Dimension named(String name) {
        return valueOf(name.toUpperCase(Locale.ROOT));
    }
}
