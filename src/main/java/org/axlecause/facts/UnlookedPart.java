package org.axlecause.facts;

/**
 * A part of an opened wheel that nobody has looked at well enough to tell; only the second call of the rule base sees it.
 *
 * @param place the wheel
 * @param component the part
 * @param check how to look at it, in words
 */
public record UnlookedPart(Place place, Component component, String check) implements Shown {

    /** The part in words. */
    public String part() {
        return component.toString().replace('-', ' ');
    }

    @Override
    public String shown() {
        return part() + " at " + place + " not looked at";
    }
}
