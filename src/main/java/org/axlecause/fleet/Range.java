package org.axlecause.fleet;

import java.util.List;
import java.util.random.RandomGenerator;
import org.axlecause.shared.YamlNode;

/**
 * The span that a value is drawn from, evenly.
 *
 * @param from lowest value
 * @param to highest value
 */
record Range(double from, double to) {

    private static final int ENDS = 2;

    static Range read(YamlNode node) {
        if (node.isScalar()) {
            double value = node.decimal().doubleValue();
            return new Range(value, value);
        }
        List<YamlNode> ends = node.items();
        if (ends.size() != ENDS) {
            throw node.wrong("'" + node.name() + "' is not a pair", "write [from, to]");
        }
        Range range = new Range(
                ends.get(0).decimal().doubleValue(), ends.get(1).decimal().doubleValue());
        if (range.from > range.to) {
            throw node.wrong("'" + node.name() + "' runs downwards", "write the lower value first");
        }
        return range;
    }

    double draw(RandomGenerator random) {
        return from + (to - from) * random.nextDouble();
    }
}
