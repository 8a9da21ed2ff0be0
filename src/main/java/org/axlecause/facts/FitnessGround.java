package org.axlecause.facts;

/**
 * A ground that sets at least this level of advice on use.
 *
 * @param level the level
 * @param place where
 * @param because ground
 */
public record FitnessGround(FitnessLevel level, Place place, Because because) implements Conclusion {

    @Override
    public String shown() {
        return level + " for " + place;
    }
}
