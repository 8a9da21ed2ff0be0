package org.axlecause.fleet;

import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.axlecause.facts.Agent;
import org.axlecause.facts.CauseCode;
import org.axlecause.facts.CheckCode;
import org.axlecause.facts.Component;
import org.axlecause.facts.Condition;
import org.axlecause.facts.MeasuredQuantity;
import org.axlecause.shared.YamlNode;
import org.jspecify.annotations.Nullable;

/**
 * One form in which a fault comes.
 *
 * @param share share of its cases
 * @param firstRun whether it is gone in a second run
 * @param each whether the values of the wheels are drawn one by one
 * @param wheels wheels it works on
 * @param trapped what keeps pressure at the wheel while the pedal is up
 * @param does what it does to the physics
 * @param found what can be seen of it
 * @param measures what is measured on it
 */
record FaultForm(
        double share,
        boolean firstRun,
        boolean each,
        Reach wheels,
        Trapped trapped,
        Map<PhysicalQuantity, Range> does,
        List<Trace> found,
        Map<MeasuredQuantity, Range> measures) {

    /** Wheels that a form works on. */
    enum Reach {
        OWN,
        ONE,
        CIRCUIT;

        @Override
        public String toString() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /** What keeps pressure at a wheel. */
    enum Trapped {
        NOTHING,
        HOSE,
        UPSTREAM;

        @Override
        public String toString() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /** Where a trace of the fault is seen. */
    enum Where {
        FAULT,
        SPOT,
        AXLE,
        VEHICLE;

        @Override
        public String toString() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /** Kind of wheel brake that a trace needs. */
    enum On {
        DRUM,
        DISC;

        @Override
        public String toString() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /**
     * Something that can be seen.
     *
     * @param component the part
     * @param condition its state
     * @param agent liquid, or null
     * @param at where
     * @param on kind of wheel brake it needs, or null
     * @param chance how often it is there
     * @param brings cause that the state is by itself, or null
     * @param by checks without which it stays hidden; none where any look shows it
     */
    record Trace(
            Component component,
            Condition condition,
            @Nullable Agent agent,
            Where at,
            @Nullable On on,
            double chance,
            @Nullable CauseCode brings,
            List<CheckCode> by) {

        static Trace read(YamlNode node) {
            node.only("component", "condition", "agent", "at", "on", "chance", "brings", "by");
            Where at = node.optionalCode("at", Where.class);
            return new Trace(
                    node.code("component", Component.class),
                    node.code("condition", Condition.class),
                    node.optionalCode("agent", Agent.class),
                    at == null ? Where.FAULT : at,
                    node.optionalCode("on", On.class),
                    node.has("chance") ? node.decimal("chance").doubleValue() : 1,
                    node.optionalCode("brings", CauseCode.class),
                    node.codes("by", CheckCode.class));
        }
    }

    static FaultForm read(YamlNode node) {
        node.only("share", "first-run", "each", "wheels", "trapped", "does", "found", "measures");
        Reach wheels = node.optionalCode("wheels", Reach.class);
        Trapped trapped = node.optionalCode("trapped", Trapped.class);
        return new FaultForm(
                node.decimal("share").doubleValue(),
                Boolean.TRUE.equals(node.optionalFlag("first-run")),
                Boolean.TRUE.equals(node.optionalFlag("each")),
                wheels == null ? Reach.OWN : wheels,
                trapped == null ? Trapped.NOTHING : trapped,
                ranges(node.optional("does"), PhysicalQuantity.class),
                node.items("found").stream().map(Trace::read).toList(),
                ranges(node.optional("measures"), MeasuredQuantity.class));
    }

    static <E extends Enum<E>> Map<E, Range> ranges(@Nullable YamlNode node, Class<E> keys) {
        EnumMap<E, Range> ranges = new EnumMap<>(keys);
        if (node != null) {
            for (String name : node.names()) {
                ranges.put(key(node, name, keys), Range.read(node.member(name)));
            }
        }
        return ranges;
    }

    static <E extends Enum<E>> E key(YamlNode node, String name, Class<E> keys) {
        for (E key : keys.getEnumConstants()) {
            if (key.toString().equals(name)) {
                return key;
            }
        }
        throw node.member(name).wrong("'" + name + "' is not known here", "write a code of " + keys.getSimpleName());
    }
}
