package org.axlecause.diagnosis;

import java.util.ArrayList;
import java.util.List;
import org.axlecause.diagnosis.Groups.Group;
import org.axlecause.facts.Place;

/** A check at a place while it is compared with others. */
final class CheckOption {

    final CheckPlace at;
    final Check check;
    final Place place;
    final List<Group> groups = new ArrayList<>();
    double bits;
    double score;
    int accessMinutes;

    CheckOption(CheckPlace at) {
        this.at = at;
        this.check = at.check();
        this.place = at.place();
    }
}
