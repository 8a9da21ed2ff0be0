package org.axlecause.fleet;

import java.util.List;
import org.axlecause.facts.Agent;
import org.axlecause.facts.CheckCode;
import org.axlecause.facts.Component;
import org.axlecause.facts.Condition;
import org.axlecause.facts.Place;
import org.jspecify.annotations.Nullable;

/**
 * A state of a part that is there to be seen.
 *
 * @param component the part
 * @param condition its state
 * @param place where
 * @param agent liquid, or null
 * @param by checks without which it stays hidden; none where any look shows it
 */
record Sight(
        Component component,
        Condition condition,
        Place place,
        @Nullable Agent agent,
        List<CheckCode> by) {

    boolean shownBy(CheckCode check) {
        return by.isEmpty() || by.contains(check);
    }
}
