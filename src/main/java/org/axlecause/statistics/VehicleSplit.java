package org.axlecause.statistics;

import java.util.UUID;
import org.axlecause.shared.Sha256;

/**
 * Parts vehicles into those whose cases are learned from and those whose cases are held out, by a digest of the vehicle
 * keyed with the proposal: all cases of a vehicle are on one side, and nobody can choose which.
 *
 * @param proposal id of the proposal
 * @param heldOutShare share of the vehicles that is held out
 */
record VehicleSplit(UUID proposal, double heldOutShare) {

    private static final int DIGITS = 13;
    private static final double OF_ALL = 0x1p52;

    boolean holdsOut(String vehicle) {
        String digest = Sha256.tagOf(proposal + "\n" + vehicle);
        return Long.parseLong(digest.substring(0, DIGITS), 16) / OF_ALL < heldOutShare;
    }
}
