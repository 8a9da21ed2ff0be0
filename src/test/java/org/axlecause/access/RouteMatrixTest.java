package org.axlecause.access;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;
import org.axlecause.Contract;
import org.axlecause.Contract.Operation;
import org.axlecause.shared.Json;
import org.axlecause.shared.TenantTransaction;
import org.axlecause.shared.TestDatabase;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/**
 * Every operation of the contract against every role, against a key of another site and against another tenant, with both
 * walls up and with row-level security taken away; a new route is in it by being in the contract.
 */
@QuarkusTest
@TestProfile(WithKeys.class)
class RouteMatrixTest {

    /** A table that the service's own role may not read at all, as TenantWallTest has it. */
    private static final String NOBODYS = "case_search";

    private static final Path SCENARIO = Path.of("src/test/resources/scenarios/leaking-cylinder-and-tight-twin");
    private static final String SITE = "quay-street";
    private static final Set<String> WITHOUT_TENANT = Set.of("code", "kind", "type");
    private static final String POLICY = "repairs-of-quay-street";
    private static final String A_POLICY = """
            {"means": "how one site repairs", "covers": ["quay-street"],
             "chain": [{"clause": "retest-imbalance", "value": 12, "unit": "%"}]}""";
    private static final int NOT_ALLOWED = 403;
    private static final int NOT_FOUND = 404;

    private static final Comparator<Operation> WRITING_LAST = Comparator.comparing(
            operation -> List.of("GET", "POST", "DELETE", "PUT").indexOf(operation.method()));

    @Inject
    MakeKey makeKey;

    @Inject
    TenantTransaction transaction;

    private final String tenant = "own-" + UUID.randomUUID().toString().substring(0, 8);
    private final String stranger = "other-" + UUID.randomUUID().toString().substring(0, 8);
    private final Map<String, String> values = new TreeMap<>();

    @BeforeEach
    void a_tenant_has_one_of_everything() throws IOException {
        String admin = key(tenant, Role.ADMIN);
        for (String site : List.of(SITE, "mill-bridge")) {
            put(admin, "/v1/sites/" + site, """
                    {"name": "Site", "timeZone": "Europe/London", "currency": "GBP", "regime": "gb-annual"}""");
        }
        put(admin, "/v1/price-lists/" + SITE, """
                {"hourlyRate": 80, "taxPercent": 20, "parts": {"wheel-cylinder": 25.50}, "hours": {}}""");
        String reference = reference();
        given().header("Authorization", "Bearer " + admin)
                .contentType("application/cloudevents-batch+json; charset=UTF-8")
                .body(Files.readString(SCENARIO.resolve("given.json")))
                .post("/v1/events")
                .then()
                .statusCode(200);
        values.put("reference", reference);
        values.put("site", SITE);
        values.put(
                "key",
                send(admin, "POST", "/v1/keys", "{\"name\": \"any\", \"role\": \"desk\"}")
                        .jsonPath()
                        .getString("key"));
        values.put(
                "subscription",
                send(admin, "POST", "/v1/subscriptions", """
                        {"address": "https://9.9.9.9/hook", "description": "any",
                         "types": ["org.axlecause.case.judged.v1"]}""").jsonPath().getString("id"));
        put(admin, "/v1/policies/" + POLICY + "/draft", A_POLICY);
        assertThat(publish(admin).statusCode()).isEqualTo(201);
        put(admin, "/v1/policies/" + POLICY + "/draft", A_POLICY);
        values.put(
                "trial",
                send(admin, "POST", "/v1/policies/" + POLICY + "/trials", "{}")
                        .jsonPath()
                        .getString("id"));
        String proposed = proposal(admin);
        given().header("Authorization", "Bearer " + admin)
                .header("If-Match", "*")
                .contentType("application/json; charset=UTF-8")
                .body(Map.of(
                        "proposal",
                        proposed,
                        "effectiveFrom",
                        OffsetDateTime.now(ZoneOffset.UTC).plusHours(1).toString(),
                        "reason",
                        "a start"))
                .post("/v1/cause-weights/versions")
                .then()
                .statusCode(201);
        values.put("proposal", proposal(admin));
        values.put("policy", POLICY);
        values.put("version", "1");
        values.put("kind", "causes");
        values.put("code", "air-in-circuit");
        values.put("type", "finding.recorded.v1");
    }

    @Test
    void a_role_opens_the_operations_that_the_contract_gives_it_and_no_other() {
        List<String> wrong = new ArrayList<>();
        for (Role role : Role.values()) {
            String key = key(tenant, role);
            for (Operation operation : operations()) {
                int status = send(key, operation).statusCode();
                boolean opened = status != NOT_ALLOWED;
                if (status == 401 || opened != operation.roles().contains(role.toString())) {
                    wrong.add(role + " gets " + status + " from " + operation);
                }
            }
        }

        assertThat(wrong).isEmpty();
        assertThat(operations()).hasSizeGreaterThan(25).allSatisfy(operation -> {
            assertThat(operation.roles()).as("roles of %s", operation).contains("admin");
            assertThat(given().contentType("application/json")
                            .request(operation.method(), operation.pathWith(values))
                            .statusCode())
                    .as("%s without a key", operation)
                    .isEqualTo(401);
        });
    }

    @Test
    void a_key_of_one_site_finds_nothing_of_another() {
        String elsewhere = makeKey.make(
                tenant, new KeyTerms(UUID.randomUUID().toString(), Role.ADMIN, List.of("mill-bridge"), null), "test");

        for (Operation operation : operations()) {
            if (operation.pathParameters().stream().anyMatch(name -> !WITHOUT_TENANT.contains(name))) {
                assertThat(send(elsewhere, operation).statusCode())
                        .as("%s of another site", operation)
                        .isIn(NOT_ALLOWED, NOT_FOUND);
            } else if (operation.method().equals("GET")) {
                assertThat(send(elsewhere, operation).asString())
                        .as("%s of another site", operation)
                        .doesNotContain("\"" + values.get("reference") + "\"");
            }
        }
    }

    @Test
    void another_tenant_finds_nothing_and_changes_nothing() {
        nothingIsFoundOrChanged();
    }

    @Test
    void another_tenant_finds_nothing_and_changes_nothing_without_row_level_security() throws SQLException {
        try {
            rowLevelSecurity("DISABLE");

            nothingIsFoundOrChanged();
        } finally {
            rowLevelSecurity("ENABLE");
        }
    }

    @Test
    void another_tenant_sees_no_row_of_any_table_by_row_level_security_alone() throws SQLException {
        key(stranger, Role.ADMIN);
        List<String> filled = new ArrayList<>();
        try (Connection connection = TestDatabase.superuser();
                Statement statement = connection.createStatement()) {
            for (String table : tables(statement)) {
                if (count(statement, "SELECT count(*) FROM " + table + " WHERE tenant_id = '" + tenant + "'") > 0) {
                    filled.add(table);
                }
            }
        }

        assertThat(filled).hasSizeGreaterThan(9).contains(NOBODYS);
        filled.remove(NOBODYS);
        for (String table : filled) {
            assertThat(transaction.<Integer>call(
                            stranger,
                            () -> transaction.jdbc((connection, open) -> {
                                try (Statement statement = connection.createStatement()) {
                                    return count(
                                            statement,
                                            "SELECT count(*) FROM " + table + " WHERE tenant_id <> '" + open + "'");
                                }
                            })))
                    .as("rows of others in %s", table)
                    .isZero();
        }
    }

    private void nothingIsFoundOrChanged() {
        String owner = key(tenant, Role.ADMIN);
        Map<String, String> before = answers(owner);
        for (Role role : Role.values()) {
            String key = key(stranger, role);
            for (Operation operation : operations()) {
                Response answer = send(key, operation);
                boolean named = operation.pathParameters().stream().anyMatch(name -> !WITHOUT_TENANT.contains(name));
                if (named && !operation.method().equals("PUT") && role == Role.ADMIN) {
                    assertThat(answer.statusCode())
                            .as("%s of another tenant", operation)
                            .isEqualTo(NOT_FOUND);
                }
                if (operation.method().equals("GET") && !named) {
                    assertThat(answer.asString())
                            .as("%s of another tenant", operation)
                            .doesNotContain("\"" + values.get("reference") + "\"", "\"" + values.get("key") + "\"");
                }
            }
        }

        assertThat(answers(owner)).isEqualTo(before);
    }

    /** Answers of statistics say of which moment they are, which goes on by itself. */
    private static String withoutItsMoment(String answer) {
        return answer.replaceFirst("\"asOf\":\"[^\"]*\"", "\"asOf\":\"\"");
    }

    /** What the owner reads from every route of its own. */
    private Map<String, String> answers(String key) {
        Map<String, String> answers = new TreeMap<>();
        operations().stream()
                .filter(operation -> operation.method().equals("GET"))
                .filter(operation -> !operation.path().contains("report"))
                .forEach(operation -> answers.put(
                        operation.toString(),
                        withoutItsMoment(send(key, operation).asString())));
        return answers;
    }

    private static List<Operation> operations() {
        return Contract.committed().operations().stream().sorted(WRITING_LAST).toList();
    }

    private Response send(String key, Operation operation) {
        String path = operation.pathWith(values) + query(operation);
        return operation.content().has("requestBody")
                ? send(key, operation.method(), path, "{}")
                : given().header("Authorization", "Bearer " + key).request(operation.method(), path);
    }

    private static String query(Operation operation) {
        return operation.path().endsWith("/report")
                ? "?audience=customer"
                : operation.path().endsWith("/effective")
                        ? "?site=" + SITE + "&version=1"
                        : operation.path().endsWith("/comparison") ? "?from=1&to=draft" : "";
    }

    private static void put(String key, String path, String body) {
        Response answer = send(key, "PUT", path, body);
        assertThat(answer.statusCode()).as(answer.asString()).isEqualTo(200);
    }

    private static Response send(String key, String method, String path, String body) {
        return given().header("Authorization", "Bearer " + key)
                .contentType("application/json; charset=UTF-8")
                .body(body)
                .request(method, path);
    }

    private String key(String of, Role role) {
        return makeKey.make(of, new KeyTerms(UUID.randomUUID().toString(), role, null, null), "test");
    }

    private static String proposal(String key) {
        return send(key, "POST", "/v1/cause-weights/proposals", "{\"weights\": \"book\"}")
                .jsonPath()
                .getString("id");
    }

    private static Response publish(String key) {
        return given().header("Authorization", "Bearer " + key)
                .header("If-Match", "*")
                .contentType("application/json; charset=UTF-8")
                .body("{\"effectiveFrom\": \"2100-01-01\", \"reason\": \"a start\"}")
                .post("/v1/policies/" + POLICY + "/versions");
    }

    private static String reference() throws IOException {
        return Json.mapper()
                .readTree(Files.readString(SCENARIO.resolve("given.json")))
                .path(0)
                .path("subject")
                .asText();
    }

    private static void rowLevelSecurity(String enableOrDisable) throws SQLException {
        try (Connection connection = TestDatabase.superuser();
                Statement statement = connection.createStatement()) {
            for (String table : tables(statement)) {
                statement.execute("ALTER TABLE " + table + " " + enableOrDisable + " ROW LEVEL SECURITY");
            }
        }
    }

    private static List<String> tables(Statement statement) throws SQLException {
        List<String> tables = new ArrayList<>();
        try (ResultSet rows = statement.executeQuery("SELECT c.relname FROM pg_class c JOIN pg_attribute a"
                + " ON a.attrelid = c.oid AND a.attname = 'tenant_id'"
                + " WHERE c.relkind = 'r' AND c.relnamespace = 'public'::regnamespace ORDER BY 1")) {
            while (rows.next()) {
                tables.add(rows.getString(1));
            }
        }
        return tables;
    }

    private static int count(Statement statement, String query) throws SQLException {
        try (ResultSet rows = statement.executeQuery(query)) {
            rows.next();
            return rows.getInt(1);
        }
    }
}
