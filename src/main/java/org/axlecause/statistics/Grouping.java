package org.axlecause.statistics;

import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.axlecause.casefile.StatisticsTerms;

/**
 * What an answer is told apart by, and the words of its groups.
 *
 * @param by what it is told apart by
 * @param regions region of each site
 * @param seasons seasons with their months
 */
record Grouping(List<GroupBy> by, Map<String, String> regions, List<StatisticsTerms.Season> seasons) {

    private static final int MONTH_LENGTH = 7;
    private static final String NONE = "none";

    Grouping {
        by = List.copyOf(by);
        regions = Map.copyOf(regions);
        seasons = List.copyOf(seasons);
    }

    List<Dimension> dimensions() {
        return by.stream()
                .map(GroupBy::dimension)
                .flatMap(Stream::ofNullable)
                .distinct()
                .toList();
    }

    boolean isByMonth() {
        return by.stream().anyMatch(GroupBy::isByMonth);
    }

    /** Members of countables that part the causes. */
    List<String> members() {
        return by.stream().map(GroupBy::member).flatMap(Stream::ofNullable).toList();
    }

    /** The group of a count whose members were asked for in this order. */
    List<String> group(CountStore.Count count, List<String> members) {
        return by.stream().map(each -> word(each, count, members)).toList();
    }

    /** A group with the names of what it is told apart by. */
    Map<String, String> named(List<String> group) {
        Map<String, String> named = new LinkedHashMap<>();
        for (int index = 0; index < by.size(); index++) {
            named.put(by.get(index).toString(), group.get(index));
        }
        return named;
    }

    private String word(GroupBy each, CountStore.Count count, List<String> members) {
        if (each.isOfCauses()) {
            String value = count.members().get(members.indexOf(each.member()));
            return value.isEmpty() || value.equals("0") ? NONE : value;
        }
        LocalDate month = count.month();
        if (each.isByMonth() && month != null) {
            return each == GroupBy.MONTH ? month.toString().substring(0, MONTH_LENGTH) : season(month);
        }
        String value = count.group().get(dimensions().indexOf(each.dimension()));
        return each == GroupBy.REGION ? regions.getOrDefault(value, StatisticsTerms.UNKNOWN) : value;
    }

    private String season(LocalDate month) {
        return seasons.stream()
                .filter(season -> season.months().contains(month.getMonth()))
                .findFirst()
                .orElseThrow()
                .code();
    }
}
