use noonday_engine::{advice, scenario, simulation};
fn main() {
    let mut d = scenario::example();
    for a in std::env::args().skip(1) { d = scenario::from_link(&format!("v=1&{a}")).unwrap(); }
    let s = scenario::Scenario::new(d).unwrap();
    let p = simulation::Prepared::new(&s).unwrap();
    let t = std::time::Instant::now();
    for _ in 0..20 { p.run().unwrap(); }
    println!("run {:?}", t.elapsed()/20);
    let t = std::time::Instant::now();
    for _ in 0..20 { simulation::Prepared::new(&s).unwrap(); }
    println!("prepare {:?}", t.elapsed()/20);
    let a = advice::advise(&s).unwrap();
    let (r, n) = (&a.with_cooler, &a.without_cooler);
    for i in (0..r.series.time_h.len()).step_by(6) {
        let q = &r.series;
        println!("{:5.1} out {:.1} cab {:.2} felt {:.2} rad {:.1} rh {:.2} | no {:.1} | sun {:.0} soc {:.3} V {:.2} cool {:.0} share {:.2} loads {:.0} pv {:.0} stop {:?}", q.time_h[i], q.outdoor_c[i], q.cabin_c[i], q.felt_c[i], q.radiant_c[i], q.relative_humidity[i], n.series.felt_c[i], q.sun_w_m2[i], q.state_of_charge[i], q.bank_voltage_v[i], q.cooler_w[i], q.cooler_share[i], q.loads_w[i], q.panels_w[i], q.stopped[i]);
    }
    println!("{:#?}", a.verdict);
    println!("{:#?} {:#?}", r.totals, r.balance);
    println!("{:?}", r.first_stop);
    for (h, w) in simulation::HeatPath::ALL.iter().zip(r.totals.heat_wh) { println!("{h:?} {w:.0}"); }
    println!("sum {:.6}", r.totals.heat_wh.iter().sum::<f64>());
    println!("{:?}", a.cost);
    let t = std::time::Instant::now();
    for e in advice::levers(&s).unwrap() { println!("{e:?}"); }
    println!("levers {:?}", t.elapsed());
    let one = p.run_in_steps(6).unwrap(); let two = p.run_in_steps(12).unwrap();
    let worst = one.series.cabin_c.iter().zip(&two.series.cabin_c).map(|(a,b)|(a-b).abs()).fold(0.0, f64::max);
    println!("halving {worst}");
}
