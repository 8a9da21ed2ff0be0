package org.axlecause.fleet;

/** What rubs on what: turns the force of one actuator into torque, as a multiple of force and effective radius. */
public sealed interface FrictionPair {

    /** Torque over actuating force and effective radius. */
    double factor();

    /** Coefficient of friction of the lining. */
    double friction();

    /** The same pair with another friction. */
    FrictionPair withFriction(double other);

    /**
     * One leading and one trailing shoe.
     *
     * @param friction coefficient of friction
     * @param shoe geometry of both shoes
     * @param leading share of the actuating force that reaches the leading shoe, 0 where its piston is stuck
     * @param trailing share that reaches the trailing shoe
     */
    record Simplex(double friction, ShoeFactor shoe, double leading, double trailing) implements FrictionPair {

        @Override
        public double factor() {
            return part(leading, shoe.leading(friction)) + part(trailing, shoe.trailing(friction));
        }

        @Override
        public Simplex withFriction(double other) {
            return new Simplex(other, shoe, leading, trailing);
        }
    }

    /**
     * Two leading shoes, each with a cylinder of its own.
     *
     * @param friction coefficient of friction
     * @param shoe geometry of both shoes
     * @param first share of the actuating force that reaches the first shoe
     * @param second share that reaches the second shoe
     */
    record Duplex(double friction, ShoeFactor shoe, double first, double second) implements FrictionPair {

        @Override
        public double factor() {
            return part(first, shoe.leading(friction)) + part(second, shoe.leading(friction));
        }

        @Override
        public Duplex withFriction(double other) {
            return new Duplex(other, shoe, first, second);
        }
    }

    /**
     * A primary shoe that pushes the secondary through a floating link.
     *
     * @param friction coefficient of friction
     * @param geometry arms of the pair
     * @param primaryWorks whether the primary shoe is pressed on
     * @param secondaryPistonWorks whether the secondary shoe's own piston moves
     */
    record DuoServo(double friction, DuoServoGeometry geometry, boolean primaryWorks, boolean secondaryPistonWorks)
            implements FrictionPair {

        @Override
        public double factor() {
            return primary() + secondary();
        }

        /** Part of the primary shoe. */
        public double primary() {
            return primaryWorks ? friction * geometry.lining() * primaryNormal() : 0;
        }

        /** Part of the secondary shoe. */
        public double secondary() {
            double link = primaryWorks
                    ? (friction * geometry.lining() * primaryNormal() + geometry.cylinder()) / geometry.link()
                    : 0;
            double own = secondaryPistonWorks ? geometry.anchor() - geometry.cylinder() : 0;
            double normal = (link * (geometry.anchor() + geometry.link()) + own)
                    / (geometry.anchor() - friction * geometry.lining());
            return friction * geometry.lining() * normal;
        }

        private double primaryNormal() {
            return (geometry.cylinder() + geometry.link()) / (geometry.link() - friction * geometry.lining());
        }

        @Override
        public DuoServo withFriction(double other) {
            return new DuoServo(other, geometry, primaryWorks, secondaryPistonWorks);
        }
    }

    /**
     * Arms of a duo-servo pair in drum radii, measured from the drum's centre.
     *
     * @param cylinder arm of the wheel cylinder
     * @param link arm of the floating link
     * @param anchor arm of the anchor
     * @param lining effective radius of the lining
     */
    record DuoServoGeometry(double cylinder, double link, double anchor, double lining) {}

    /**
     * Two pads on a disc; the actuating force is that of one side.
     *
     * @param friction coefficient of friction
     * @param outer share of the force that reaches the outer pad, below 1 where a floating calliper can't slide
     */
    record Disc(double friction, double outer) implements FrictionPair {

        @Override
        public double factor() {
            return friction * (1 + outer);
        }

        @Override
        public Disc withFriction(double other) {
            return new Disc(other, outer);
        }
    }

    private static double part(double share, double factor) {
        return share == 0 ? 0 : share * factor;
    }
}
