package org.axlecause.diagnosis;

import org.axlecause.shared.YamlNode;

/** Numbers of the cause model with the bounds that each must keep. */
final class ModelNumbers {

    private ModelNumbers() {}

    static double probability(YamlNode node) {
        double value = node.decimal().doubleValue();
        if (value < 0 || value > 1) {
            throw node.wrong("probability " + node.text() + " is outside 0 to 1", "write a value such as 0.9");
        }
        return value;
    }

    static double positive(YamlNode node) {
        double value = node.decimal().doubleValue();
        if (value <= 0) {
            throw node.wrong(node.text() + " is not above 0", "write a value above 0");
        }
        return value;
    }
}
