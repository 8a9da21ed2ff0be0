import client.ApiClient;
import client.ApiException;
import client.api.AdministrationApi;
import client.api.CasesApi;
import client.api.EventsApi;
import client.model.CaseDocument;
import client.model.Event;
import client.model.SiteView;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;

/** The main job as a workshop system would write it against the client that is generated from the contract. */
public final class MainJob {

    private static final String REFERENCE = "QS-CLIENT";

    private final EventsApi events;
    private final CasesApi cases;
    private final AdministrationApi administration;

    private MainJob(String address) {
        ApiClient client = new ApiClient();
        client.updateBaseUri(address);
        events = new EventsApi(client);
        cases = new CasesApi(client);
        administration = new AdministrationApi(client);
    }

    /** Sends a vehicle, its roller test and a finding, and reads what follows: status, version and confirmed causes. */
    public static String run(String address) throws ApiException {
        MainJob job = new MainJob(address);
        job.administration.putSite(
                "quay-street",
                new SiteView().name("Quay Street").timeZone("Europe/London").currency("GBP").regime("gb-annual"));
        job.send("p", "vehicle.presented", 15, Map.of(
                "site", "quay-street",
                "reason", "failed-inspection",
                "vehicle", Map.of(
                        "category", "N1",
                        "make", "Corvane",
                        "axles", List.of(
                                Map.of("number", 1, "steered", true, "brake", "disc-floating"),
                                Map.of(
                                        "number", 2,
                                        "brake", "drum-simplex",
                                        "parkingBrake", "cable-on-service-shoes")))));
        job.send("t", "roller-test.recorded", 30, Map.of(
                "stage", "arrival",
                "brake", "service",
                "axles", List.of(Map.of(
                        "number", 2,
                        "left", Map.of("peak", Map.of("value", 1610, "unit", "N")),
                        "right", Map.of("peak", Map.of("value", 590, "unit", "N"))))));
        job.send("f", "finding.recorded", 45, Map.of(
                "stage", "as-found",
                "component", "wheel-cylinder",
                "condition", "leaking",
                "agent", "brake-fluid",
                "axle", 2,
                "side", "right"));
        CaseDocument document = job.cases.getCase(REFERENCE);
        return document.getStatus() + " " + document.getVersion() + " "
                + document.getCauses().stream()
                        .filter(cause -> "confirmed".equals(cause.get("standing")))
                        .map(cause -> cause.get("code").toString())
                        .toList();
    }

    private void send(String id, String type, int minute, Map<String, Object> data) throws ApiException {
        events.postEvents(
                new Event()
                        .specversion("1.0")
                        .type("org.axlecause." + type + ".v1")
                        .source("/sites/quay-street")
                        .id("client-" + id)
                        .subject(REFERENCE)
                        .time(OffsetDateTime.parse("2026-03-02T08:%d:00Z".formatted(minute)))
                        .data(data),
                null);
    }
}
