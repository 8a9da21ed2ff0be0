package org.axlecause.inference;

import java.util.Locale;

/** A folder of the rule base with the prefix that its rules bear. */
public enum Layer {
    DEFICIENCIES("DEF"),
    SYMPTOMS("SYM"),
    CAUSES("CAU"),
    SCOPE("SCO"),
    WORK("WRK"),
    OUTCOME("OUT");

    private final String prefix;

    Layer(String prefix) {
        this.prefix = prefix;
    }

    /** Prefix of the ids of the layer's rules. */
    public String prefix() {
        return prefix;
    }

    /** Package of the layer's rules. */
    public String rulePackage() {
        return "rules." + this;
    }

    /** Name of the layer's folder. */
    @Override
    public String toString() {
        return name().toLowerCase(Locale.ROOT);
    }

    static Layer ofPackage(String rulePackage) {
        for (Layer layer : values()) {
            if (layer.rulePackage().equals(rulePackage)) {
                return layer;
            }
        }
        throw new IllegalStateException("The rule package " + rulePackage
                + " belongs to no layer; expected one of rules.deficiencies, rules.symptoms, rules.causes, rules.scope,"
                + " rules.work, rules.outcome. Move the file to the folder of its layer.");
    }
}
